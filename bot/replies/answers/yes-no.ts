import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { lookAhead } from "../look-words.ts";
import { lineOf, nearestWords, nothingKnown, periodWords, topicName, wordsButton } from "./parts.ts";

const NOT_DONE: Partial<Record<Answer["because"], string>> = {
  "only-planned": "No. It is planned, not done.",
  "only-found-wrong": "No. It was found wrong, and nothing is on record that was done about it.",
  "another-place": "Not there, as far as I know.",
};

/** Was it ever done? */
export const everReply = (turn: Turn, answer: Answer): Reply => {
  const [record] = answer.records;
  if (answer.verdict === "yes" && record !== undefined) {
    const more = answer.records.length > 1 ? ` ${answer.records.length} times in all; the last:` : "";
    return { text: `Yes.${more}\n${lineOf(turn, record)}`, buttons: [wordsButton(record)] };
  }
  const topic = "topic" in answer.query ? topicName(answer.query.topic) : "that";
  const reason =
    NOT_DONE[answer.because] ?? `No. Nothing of the sort is on record for ${topic}${periodWords(answer)}.`;
  return { text: `${reason}${nearestWords(turn, answer)}` };
};

/** Is it still holding? */
export const holdingReply = (turn: Turn, answer: Answer): Reply => {
  const [record] = answer.records;
  if (record === undefined) return { text: nothingKnown(turn, answer) };
  const lead =
    answer.verdict === "yes"
      ? "Yes, as far as you have told me."
      : answer.verdict === "no"
        ? "No."
        : "You have not told me how it holds.";
  return {
    text: `${lead}\n${lineOf(turn, record)}${lookAhead(turn, record)}`,
    buttons: [wordsButton(record)],
  };
};
