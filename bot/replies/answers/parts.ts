import { sayDate } from "../../../shared/edtf.ts";
import type { KeptRecord } from "../../../shared/history.ts";
import type { Answer } from "../../../shared/memory/answer-data.ts";
import { EMPTY_TOPIC, type Topic } from "../../../shared/memory/query.ts";
import { componentName } from "../../../shared/vocabulary.ts";
import type { Button } from "../../conversation/buttons.ts";
import type { Turn } from "../../conversation/turn.ts";
import { lineContext, recordLine } from "../record-line.ts";

export const lineOf = (turn: Turn, record: KeptRecord): string => recordLine(record, lineContext(turn));

export const when = (turn: Turn, record: KeptRecord): string =>
  record.fields.date === null
    ? "at a time you did not say"
    : sayDate(record.fields.date, turn.today, turn.rig.hemisphere);

/** "the gray tank", "the roof or the skylight", or "that" when nothing is named. */
export const topicName = ({ named, systems }: Topic): string => {
  const names = named.slice(0, 2).map(({ component }) => `the ${componentName(component)}`);
  if (names.length > 0) return names.join(" or ");
  const [system] = systems;
  return system === undefined ? "that" : `the ${system.replaceAll("-", " ")}`;
};

export const periodWords = (answer: Answer): string => {
  const period = "period" in answer.query ? answer.query.period : null;
  return period === null ? "" : ` ${period.said}`;
};

/** The closest things known, when nothing fits. */
export const nearestWords = (turn: Turn, answer: Answer): string => {
  if (answer.nearest.length === 0) return "";
  const lines = answer.nearest.slice(0, 3).map((record) => `• ${lineOf(turn, record)}`);
  return `\n\nThe closest I have:\n${lines.join("\n")}`;
};

/** Whether something else is on record of what was asked about. */
const knowsThing = ({ query, nearest }: Answer): boolean =>
  "topic" in query &&
  nearest.some(({ fields }) => query.topic.named.some(({ component }) => component === fields.component));

/** "I have nothing on record about the sink", "… in summer 2024", "I have no such work on the sink on record." */
export const nothingKnown = (turn: Turn, answer: Answer): string => {
  const name = topicName(answer.query.ask === "use" ? EMPTY_TOPIC : answer.query.topic);
  const period = periodWords(answer);
  if (knowsThing(answer))
    return `I have no such work on ${name} on record${period}.${nearestWords(turn, answer)}`;
  const about = name === "that" && period !== "" ? "" : ` about ${name}`;
  return `I have nothing on record${about}${period}.${nearestWords(turn, answer)}`;
};

/** Lets the person see the words that an answer rests on. */
export const wordsButton = (record: KeptRecord): readonly Button[] => [
  { label: "Your words", tap: { tap: "words", note: record.noteId } },
];
