import { surelyNamed } from "../../nlp/ask/surely-named.ts";
import { read } from "../../nlp/read/index.ts";
import { workGoingOn } from "../../nlp/understand/going-on.ts";
import { type Known, ownersIn, spelledInContext, spelledPlainly } from "../../nlp/understand/in-context.ts";
import { wordOn, wordOnWork } from "../../nlp/understand/word-on.ts";
import type { KeptRecord, RecordId } from "../../shared/history.ts";
import type { Again } from "../../shared/memory/intent.ts";
import { isLive } from "../../shared/memory/told.ts";
import { workAgain } from "../../shared/memory/work-again.ts";
import type { Draft, Moment, Reading } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { momentOf } from "../rig/rig.ts";
import { isKnown } from "./known.ts";
import type { ReadAs, ToldNote } from "./told.ts";
import { troubleAgain } from "./trouble-again.ts";
import type { Turn } from "./turn.ts";

export type ReadNote = { readonly text: string; readonly reading: Reading };

/** The work of kept records, done at another place too. */
const readAgain = (turn: Turn, again: Again, text: string, moment: Moment): Reading => {
  const kept = again.records.flatMap((id) => turn.store.history.record(id) ?? []);
  return { records: kept.map((record) => workAgain(record, again, text, moment)), usage: [] };
};

/** How many of the latest records may say what a part belongs to. */
const LATEST = 40;

/** What was last told of stands first, then what is open, then the latest work. */
const knownThings = (turn: Turn): readonly Known[] => {
  const { history, outbox } = turn.store;
  const last = outbox.lastShown(turn.chat.channel, turn.chat.chatId, "note")?.shows.records ?? [];
  const told = (record: KeptRecord): Known => ({
    component: record.fields.component,
    words: [history.note(record.noteId)?.text ?? "", record.fields.fault ?? ""].join(" "),
    materials: record.fields.materials,
    action: record.fields.action,
  });
  return [
    ...last.flatMap((id) => history.record(id) ?? []).filter(({ removed }) => !removed),
    ...history.records({ open: true, limit: LATEST }),
    ...history.records({ kinds: ["repair"], limit: LATEST }),
  ].map(told);
};

/** Whether a text names no thing that is known, so that what was told before may say what is meant. */
const isVague = (turn: Turn, text: string): boolean =>
  surelyNamed(text).every((component) => !isKnown(turn, component));

const isMended = (turn: Turn, component: ComponentId): boolean =>
  turn.store.history.records({ components: [component], kinds: ["repair"], limit: LATEST }).some(isLive);

/** A word on a fix that is known, where the note reads as nothing else. */
const wordOnFix = (turn: Turn, text: string, known: readonly Known[], moment: Moment): Draft | undefined => {
  const component = [...surelyNamed(text), ...ownersIn(text, known)].find((each) => isMended(turn, each));
  return component === undefined ? undefined : wordOn(text, component, moment);
};

/** A look or trouble of a thing that the note does not name, and that nobody mended. */
const isMistaken = (
  turn: Turn,
  text: string,
  { kind, component }: RecordFields,
  { meant, surely }: { readonly meant: ComponentId; readonly surely: boolean },
): boolean =>
  component !== meant &&
  (kind === "check" || kind === "fault") &&
  (surely || !surelyNamed(text).includes(component)) &&
  !isMended(turn, component);

/** The work that a note is heard to be a word on, where it reads as nothing, or as a word on what it does not name and nobody mended. */
const wordHeard = (
  turn: Turn,
  text: string,
  { about, after }: ReadAs,
  { records }: Reading,
  moment: Moment,
): Draft | undefined => {
  const meant = about === null ? undefined : turn.store.history.record(about)?.fields.component;
  if (meant === undefined || records.length > 1) return undefined;
  const [mine] = records.map(({ fields }) => fields);
  if (mine !== undefined && !isMistaken(turn, text, mine, { meant, surely: about === after }))
    return undefined;
  return wordOnWork(text, meant, moment) ?? (mine === undefined ? wordOn(text, meant, moment) : undefined);
};

/** Work on the thing that a note goes on from, where the note names none. */
const workHeard = (
  turn: Turn,
  text: string,
  after: RecordId | null,
  { records, usage }: Reading,
  moment: Moment,
): Draft | undefined => {
  const meant = after === null ? undefined : turn.store.history.record(after)?.fields;
  if (meant === undefined || (records.length === 0 && usage.length > 0)) return undefined;
  return workGoingOn(text, meant, records, moment);
};

/** "That jack leg", of the stabilizer that was told of, where it reads as a thing of which nothing is known. */
const readPlainly = (turn: Turn, text: string, reading: Reading, moment: Moment): Reading => {
  const [mine, ...others] = reading.records.map(({ fields }) => fields.component);
  const [meant, ...more] = surelyNamed(text).filter((component) => isKnown(turn, component));
  if (mine === undefined || meant === undefined || others.length + more.length > 0) return reading;
  if (surelyNamed(text).includes(mine) || isKnown(turn, mine)) return reading;
  const plainly = read(spelledPlainly(text, meant) ?? text, moment);
  const isMeant = plainly.records.length === 1 && plainly.records[0]?.fields.component === meant;
  return isMeant ? plainly : reading;
};

/** A note as it is to be read: with what points back spelled out, and the thing named whose part it tells of. */
export const readNote = (turn: Turn, note: ToldNote, how: ReadAs): ReadNote => {
  const moment = momentOf(note.said, turn.rig);
  const text = how.read ?? note.text;
  if (how.again !== null) return { text, reading: readAgain(turn, how.again, text, moment) };
  const known = isVague(turn, text) ? knownThings(turn) : [];
  const spelled = spelledInContext(text, known, moment) ?? text;
  const reading = readPlainly(turn, spelled, read(spelled, moment), moment);
  const isEmpty = reading.records.length + reading.usage.length === 0;
  const word =
    wordHeard(turn, text, how, reading, moment) ??
    workHeard(turn, text, how.after, reading, moment) ??
    troubleAgain(turn, text, reading) ??
    (isEmpty ? wordOnFix(turn, text, known, moment) : undefined);
  return word === undefined
    ? { text: spelled, reading }
    : { text, reading: { records: [word], usage: read(text, moment).usage } };
};
