import { surelyNamed } from "../../nlp/ask/surely-named.ts";
import { wordOnWork } from "../../nlp/understand/word-on.ts";
import type { RecordId } from "../../shared/history.ts";
import { link } from "../../shared/memory/link.ts";
import { pickLabel } from "../replies/told.ts";
import { momentOf } from "../rig/rig.ts";
import { isKnown } from "./known.ts";
import { waitFor } from "./pending.ts";
import type { ReadNote } from "./read-note.ts";
import type { ToldNote } from "./told.ts";
import type { Reply, Turn } from "./turn.ts";

/** Fewer are no choice. */
const FEWEST = 2;

/** Whether a note reads as nothing, or just as a look or trouble of a thing that it does not name and of which nothing is known. */
const tellsOfNothingKnown = (turn: Turn, { text, reading: { records, usage } }: ReadNote): boolean => {
  const [mine, ...others] = records.map(({ fields }) => fields);
  if (mine === undefined) return usage.length === 0;
  return (
    others.length === 0 &&
    (mine.kind === "check" || mine.kind === "fault") &&
    !surelyNamed(text).includes(mine.component) &&
    !isKnown(turn, mine.component)
  );
};

/** "Still bone dry", which may be said of several works: asked once which, with the words kept meanwhile. */
export const whichWork = (
  turn: Turn,
  note: ToldNote,
  read: ReadNote,
  works: readonly RecordId[],
): Reply | undefined => {
  if (works.length < FEWEST || !tellsOfNothingKnown(turn, read)) return undefined;
  const moment = momentOf(note.said, turn.rig);
  const { history } = turn.store;
  const offered = works.flatMap((id) => {
    const record = history.record(id);
    const word = record === undefined ? undefined : wordOnWork(note.text, record.fields.component, moment);
    const [step] = word === undefined ? [] : link([word], note.text, history, moment, id);
    return record !== undefined && step?.step === "verdict" && step.record === id ? [{ record, step }] : [];
  });
  if (offered.length < FEWEST) return undefined;
  const candidates = offered.map(({ record }) => record.id);
  const picked = offered.map(({ step }) => step);
  waitFor(turn, { is: "which-record", kept: null, noteId: note.id, candidates, picked });
  return {
    text: "Kept your words. Which of these are they about?",
    buttons: [
      ...offered.map(({ record }) => [
        { label: pickLabel(turn, record), tap: { tap: "pick", record: record.id } } as const,
      ]),
      [{ label: "None of these", tap: { tap: "none" } }],
    ],
  };
};
