import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { withNumbers } from "../numbered.ts";
import { plural } from "../words.ts";
import { lineOf } from "./parts.ts";

const LONGEST_LIST = 10;
const TICKS_A_ROW = 4;

const inRows = <T>(items: readonly T[], size: number): T[][] =>
  items.length === 0 ? [] : [items.slice(0, size), ...inRows(items.slice(size), size)];

const headOf = (answer: Answer): string => {
  const { kind, records, because } = answer;
  const things = plural(records.length, "thing");
  if (records.length === 0) return kind === "buy" ? "Nothing to buy that I know of." : "Nothing is open.";
  if (because === "open-elsewhere")
    return kind === "buy"
      ? `Nothing to buy for that. For the rest, ${things}:`
      : `Nothing is open on that. On the rest, ${things}:`;
  return `${kind === "buy" ? "To buy" : "Open"}, ${things}:`;
};

/** What let go stands under its own line, after what is open. */
export const openReply = (turn: Turn, answer: Answer): Reply => {
  const all = [...answer.records, ...answer.letGo];
  const shown = all.slice(0, LONGEST_LIST);
  const lines = withNumbers(shown.map((record) => lineOf(turn, record)));
  const open = lines.slice(0, answer.records.length);
  const broken = lines.slice(answer.records.length);
  const more = all.length - shown.length;
  const text = [
    headOf(answer),
    ...open,
    ...(broken.length === 0
      ? []
      : [answer.records.length === 0 ? "But this let go:" : "And this let go:", ...broken]),
    ...(more > 0 ? [`…and ${more} more.`] : []),
  ].join("\n");
  const ticks = shown.map((record, index) => ({
    label: shown.length === 1 ? "Done" : `${index + 1} done`,
    tap: { tap: "settle" as const, record: record.id },
  }));
  return { text, buttons: inRows(ticks, TICKS_A_ROW) };
};
