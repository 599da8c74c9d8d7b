import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { numbered } from "../numbered.ts";
import { plural } from "../words.ts";
import { lineOf, nothingKnown, periodWords } from "./parts.ts";

const LONGEST_LIST = 12;

export const listReply = (turn: Turn, answer: Answer): Reply => {
  if (answer.records.length === 0) return { text: nothingKnown(turn, answer) };
  const shown = answer.records.slice(0, LONGEST_LIST);
  const more = answer.records.length - shown.length;
  const head = `${plural(answer.records.length, "entry", "entries")}${periodWords(answer)}:`;
  const tail = more > 0 ? `\n…and ${more} more. Name a part or a shorter time to see them.` : "";
  return { text: `${head}\n${numbered(shown.map((record) => lineOf(turn, record)))}${tail}` };
};
