import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { numbered } from "../numbered.ts";
import { plural } from "../words.ts";
import { lineOf } from "./parts.ts";

const LONGEST_LIST = 10;
const TICKS_A_ROW = 4;

const inRows = <T>(items: readonly T[], size: number): T[][] =>
  items.length === 0 ? [] : [items.slice(0, size), ...inRows(items.slice(size), size)];

export const openReply = (turn: Turn, answer: Answer): Reply => {
  const { records } = answer;
  const buying = answer.kind === "buy";
  if (records.length === 0) return { text: buying ? "Nothing to buy that I know of." : "Nothing is open." };
  const shown = records.slice(0, LONGEST_LIST);
  const more = records.length - shown.length;
  const head = buying
    ? `To buy, ${plural(records.length, "thing")}:`
    : `Open, ${plural(records.length, "thing")}:`;
  const tail = more > 0 ? `\n…and ${more} more.` : "";
  const ticks = shown.map((record, index) => ({
    label: shown.length === 1 ? "Done" : `${index + 1} done`,
    tap: { tap: "settle" as const, record: record.id },
  }));
  return {
    text: `${head}\n${numbered(shown.map((record) => lineOf(turn, record)))}${tail}`,
    buttons: inRows(ticks, TICKS_A_ROW),
  };
};
