import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { numbered } from "../numbered.ts";
import { thingName } from "../record-line.ts";
import { plural } from "../words.ts";
import { periodWords } from "./parts.ts";

/** What keeps letting go, the worst first. */
export const worstReply = (_turn: Turn, answer: Answer): Reply => {
  if (answer.records.length === 0)
    return { text: `No fix is on record as having let go${periodWords(answer)}.` };
  const failures = new Map<string, number>();
  for (const { fields } of answer.records)
    failures.set(thingName(fields), (failures.get(thingName(fields)) ?? 0) + 1);
  const lines = [...failures]
    .sort(([, a], [, b]) => b - a)
    .slice(0, 6)
    .map(([name, count]) => `${name}: let go ${plural(count, "time")}.`);
  return { text: numbered(lines) };
};
