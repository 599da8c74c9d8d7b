import type { RecordId } from "../../shared/history.ts";
import { planLooks } from "../nudges/plan-looks.ts";
import { lineContext, recordLine } from "../replies/record-line.ts";
import { correctPicked } from "./correct.ts";
import { OLD_BUTTON } from "./old-button.ts";
import { type Asked, askedIn, heardBack } from "./pending.ts";
import { savePlan } from "./save-plan.ts";
import type { Reply, Turn } from "./turn.ts";

type WhichRecord = Extract<Asked, { is: "which-record" }>;

/** A note that was kept, as new work or just as words, becomes word on the record that was meant. */
const putWith = (turn: Turn, asked: WhichRecord, record: RecordId): Reply => {
  const step = asked.picked[asked.candidates.indexOf(record)];
  const note = turn.store.notes.get(asked.noteId);
  if (step === undefined || note === undefined) return { text: OLD_BUTTON };
  if (asked.kept !== null) turn.keeper.remove(asked.kept);
  const saved = savePlan([step], { id: note.id, saidAt: note.saidAt }, turn.keeper);
  planLooks(turn, [...saved.map((each) => each.record), ...(asked.kept === null ? [] : [asked.kept])]);
  const kept = turn.store.history.record(record);
  return {
    text:
      kept === undefined
        ? "Added to the earlier one."
        : `Added to that one. ${recordLine(kept, lineContext(turn))}`,
    buttons: [[{ label: "Undo", tap: { tap: "undo", turn: turn.turnId } }]],
    shows: { of: "note", records: [record] },
  };
};

const pickedRecord = (turn: Turn, asked: WhichRecord, records: readonly RecordId[]): void => {
  const [record] = records;
  if (record === undefined || record === asked.kept)
    turn.say({ text: asked.kept === null ? "All right, they stay as your words." : "Kept as new work." });
  else turn.say(putWith(turn, asked, record));
};

/** What was asked about is settled: which records are meant, or none of them. */
export const picked = (turn: Turn, records: readonly RecordId[]): void => {
  const asked = askedIn(turn);
  if (asked?.is !== "which-record" && asked?.is !== "which-to-amend")
    return void turn.say({ text: OLD_BUTTON });
  heardBack(turn);
  if (asked.is === "which-record") pickedRecord(turn, asked, records);
  else if (records.length === 0) turn.say({ text: "Then I leave them as they are." });
  else correctPicked(turn, asked.correction, records);
};
