import { capital } from "../../../shared/capital.ts";
import { sayDate } from "../../../shared/edtf.ts";
import type { KeptRecord } from "../../../shared/history.ts";
import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Focus } from "../../../shared/memory/query.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { sayMoney } from "../../rig/money.ts";
import { lineHistory } from "../line-history.ts";
import { lookAhead } from "../look-words.ts";
import { whoDid } from "../who.ts";
import { listed } from "../words.ts";
import { lineOf, nothingKnown, periodWords, topicName, when, wordsButton } from "./parts.ts";

/** The one thing asked for, said first; empty when the record's own line says it well. */
const LEADS: Record<Focus, (turn: Turn, record: KeptRecord) => string> = {
  what: () => "",
  state: () => "",
  cure: () => "",
  "how-long-ago": (turn, record) => `${capital(when(turn, record))}.`,
  when: (turn, record) => `${capital(when(turn, record))}.`,
  materials: (_, { fields }) =>
    fields.materials.length === 0
      ? "You did not say what you used."
      : `${capital(listed(fields.materials))}.`,
  who: (_, record) => `${capital(record.doneBy === null ? record.saidBy : whoDid(record.doneBy))} did it.`,
  why: (_, { fields }) =>
    fields.fault === null ? "You did not say why." : `Because of this: ${fields.fault}.`,
  cost: (turn, { fields }) =>
    fields.cost === null ? "You did not say what it cost." : `${sayMoney(fields.cost, turn.rig.zone)}.`,
  place: (_, { fields }) => (fields.where === null ? "You did not say where." : `${capital(fields.where)}.`),
};

const lastLook = (turn: Turn, record: KeptRecord): string => {
  const verdict = record.verdicts.at(-1);
  return verdict === undefined
    ? ""
    : ` You last said so ${sayDate(verdict.when, turn.today, turn.rig.hemisphere)}.`;
};

/** That it is not quite what was asked for. */
const caveat = (answer: Answer): string => {
  const thing = answer.query.ask === "last" ? topicName(answer.query.topic) : "that";
  switch (answer.because) {
    case "another-time":
      return `Nothing on record${periodWords(answer)}. What I have:`;
    case "kin":
      return `Nothing on record about ${thing} itself. What comes closest:`;
    case "other-work":
      return `I have no such work on ${thing}. The last that was done there:`;
    default:
      return "";
  }
};

export const lastReply = (turn: Turn, answer: Answer): Reply => {
  const [record] = answer.records;
  if (record === undefined) return { text: nothingKnown(turn, answer) };
  const focus = answer.query.ask === "last" ? answer.query.focus : "what";
  const lead = caveat(answer) || LEADS[focus](turn, record);
  const line = `${lineOf(turn, record)}${lastLook(turn, record)}${lookAhead(turn, record)}`;
  const before = lineHistory(turn, record);
  return {
    text: [lead, line, before].filter((part) => part !== "").join("\n\n"),
    buttons: [wordsButton(record)],
  };
};
