import { capital } from "../../../shared/capital.ts";
import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { sayCount } from "../words.ts";
import { periodWords } from "./parts.ts";

export const useReply = (_turn: Turn, answer: Answer): Reply => {
  if (answer.use.length === 0) return { text: `No use of the rig is on record${periodWords(answer)}.` };
  const lines = answer.use.map(
    ({ unit, count, entries }) =>
      `${sayCount(count)} ${unit}, from ${entries.length === 1 ? "one entry" : `${entries.length} entries`}`,
  );
  return {
    text: capital(
      `${periodWords(answer).trim()}${periodWords(answer) === "" ? "" : ": "}${lines.join("\n")}.`,
    ),
  };
};
