import type { KeptRecord, RecordId } from "../../shared/history.ts";
import { planLooks } from "../nudges/plan-looks.ts";
import { lookAhead } from "../replies/look-words.ts";
import { thingName } from "../replies/record-line.ts";
import { doneWord } from "../replies/words.ts";
import type { LookAnswer } from "./buttons.ts";
import type { Turn } from "./turn.ts";

/** A put-off look comes back after a week. */
const PUT_OFF = { days: 7 };

const SAID: Record<Exclude<LookAnswer, "later">, string> = {
  holding: "still good",
  partly: "better, not right",
  failed: "came back",
};

const putOff = (turn: Turn, record: RecordId): void =>
  turn.store.looks.putOff(record, turn.today.add(PUT_OFF).toString());

const judge = (
  turn: Turn,
  record: RecordId,
  outcome: Exclude<LookAnswer, "later">,
  noteId: number | null,
): void => {
  turn.keeper.addVerdict(record, { outcome, when: turn.today.toString(), exposure: [], noteId });
  turn.store.looks.answered(record);
};

/** The same answer twice on one day is one look. */
const isSaidAlready = (turn: Turn, record: KeptRecord, given: LookAnswer): boolean => {
  const last = record.verdicts.at(-1);
  return last?.outcome === given && last.when === turn.today.toString();
};

const afterwards = (turn: Turn, record: KeptRecord, given: LookAnswer): string => {
  const name = `${thingName(record.fields)}, ${doneWord(record.fields.action)}`;
  if (given === "later") return `${name}: I ask again later.${lookAhead(turn, record)}`;
  const next =
    given === "failed" ? " Tell me when you have done something about it." : lookAhead(turn, record);
  return `${name}: ${SAID[given]}.${next}`;
};

/** Takes the answer to a look and moves the next one. Returns one line on each record; none for those that are gone. */
export const takeVerdict = (
  turn: Turn,
  records: readonly RecordId[],
  given: LookAnswer,
  noteId: number | null,
): ReadonlyMap<RecordId, string> => {
  const kept = (id: RecordId): readonly KeptRecord[] => {
    const record = turn.store.history.record(id);
    return record === undefined || record.removed ? [] : [record];
  };
  for (const record of records.flatMap(kept)) {
    if (given === "later") putOff(turn, record.id);
    else if (!isSaidAlready(turn, record, given)) judge(turn, record.id, given, noteId);
  }
  planLooks(turn, records);
  return new Map(records.flatMap(kept).map((record) => [record.id, afterwards(turn, record, given)]));
};

export const GONE = "That record was taken away, so there is nothing to judge.";

/** A spoken answer: "still good", "came back". */
export const verdict = (
  turn: Turn,
  records: readonly RecordId[],
  given: LookAnswer,
  noteId: number | null,
): void => {
  const lines = takeVerdict(turn, records, given, noteId);
  turn.say({
    text: lines.size === 0 ? GONE : [...lines.values()].join("\n"),
    ...(lines.size === 0 || given === "later"
      ? {}
      : { buttons: [[{ label: "Undo", tap: { tap: "undo" as const, turn: turn.turnId } }]] }),
    shows: { of: "note", records: [...records], noteId },
  });
};
