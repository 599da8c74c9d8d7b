import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { numbered } from "../numbered.ts";
import { lineOf, periodWords, topicName } from "./parts.ts";

const times = (count: number): string => (count === 1 ? "Once" : count === 2 ? "Twice" : `${count} times`);

export const countReply = (turn: Turn, answer: Answer): Reply => {
  const count = answer.count ?? 0;
  const failures = answer.query.ask === "count" && answer.query.of === "failures";
  const topic = "topic" in answer.query ? topicName(answer.query.topic) : "that";
  if (count === 0) {
    const none = failures
      ? `Never, as far as I know: no fix on ${topic} is on record as having let go`
      : `Not once on record for ${topic}`;
    return { text: `${none}${periodWords(answer)}.` };
  }
  const lines = numbered(answer.records.slice(0, 8).map((record) => lineOf(turn, record)));
  return { text: `${times(count)}${periodWords(answer)}.\n${lines}` };
};
