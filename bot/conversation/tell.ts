import { tellsAnything } from "../../nlp/read/tells-anything.ts";
import type { RecordId } from "../../shared/history.ts";
import { link } from "../../shared/memory/link.ts";
import { contradictedReading } from "../../shared/memory/meter.ts";
import { planLooks } from "../nudges/plan-looks.ts";
import { toldReply } from "../replies/told.ts";
import { localIso, momentOf } from "../rig/rig.ts";
import { curing } from "./curing.ts";
import { happenings } from "./happenings.ts";
import { waitFor } from "./pending.ts";
import { type ReadNote, readNote } from "./read-note.ts";
import { type Saved, savePlan } from "./save-plan.ts";
import type { ReadAs, Told, ToldNote } from "./told.ts";
import type { Reply, Turn } from "./turn.ts";
import { whichWork } from "./which-work.ts";

const AS_SAID: ReadAs = { read: null, again: null, about: null, after: null, maybe: [] };

/** Links a note to what is known and writes it down. */
const keepTold = (turn: Turn, note: ToldNote, { text, reading }: ReadNote, how: ReadAs): Told => {
  const moment = momentOf(note.said, turn.rig);
  const backwards = reading.usage.flatMap(
    ({ usage }) => contradictedReading(usage, turn.store.history, moment) ?? [],
  );
  const plan = link(reading.records, text, turn.store.history, moment, how.about);
  const saved = savePlan(plan, { id: note.id, saidAt: localIso(note.said, turn.rig.zone) }, turn.keeper);
  const usage = reading.usage.map((draft) => ({ id: turn.keeper.addUsage(note.id, draft), draft }));
  planLooks(turn, usage.length > 0 ? "all" : touched(saved));
  return { note: { ...note, text }, saved, usage, backwards };
};

const touched = (saved: readonly Saved[]): readonly RecordId[] => saved.map(({ record }) => record);

/** The records that one note made or changed, each once, in its order. */
const shownRecords = ({ saved }: Told): readonly RecordId[] => [...new Set(touched(saved))];

const askWhichOnce = (turn: Turn, told: Told): void => {
  const unclear = told.saved.find((each) => each.unclear !== null);
  if (unclear?.unclear == null) return;
  const { candidates, picked } = unclear.unclear;
  waitFor(turn, {
    is: "which-record",
    kept: unclear.record,
    noteId: told.note.id,
    candidates: [...candidates],
    picked,
  });
};

/** The reply to a note, after it was kept. */
const replyTo = (turn: Turn, told: Told): Reply => {
  askWhichOnce(turn, told);
  return {
    ...toldReply(turn, told, { cure: curing(turn, told), after: happenings(turn, told) }),
    shows: {
      of: told.saved.length + told.usage.length > 0 ? "note" : null,
      records: [...shownRecords(told)],
      usage: told.usage.map(({ id }) => id),
      noteId: told.note.id,
    },
  };
};

/** What stands beside a question or a correction is a note only where it tells of something. */
export const tellRest = (turn: Turn, note: ToldNote): void => {
  if (tellsAnything(note.text, momentOf(note.said, turn.rig))) tell(turn, note);
};

export const tell = (turn: Turn, note: ToldNote, how: ReadAs = AS_SAID): void => {
  turn.store.notes.told(note.id);
  const read = readNote(turn, note, how);
  turn.say(whichWork(turn, note, read, how.maybe) ?? replyTo(turn, keepTold(turn, note, read, how)));
};
