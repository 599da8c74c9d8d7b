import type { History, KeptRecord } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { Answer } from "./answer-data.ts";
import { answerTo } from "./answer-parts.ts";
import { placeFits } from "./fit.ts";
import { comparePlaces } from "./place.ts";
import { BY_NAME, type Ground, namesNothing, stepsOf } from "./pool.ts";
import { EMPTY_TOPIC, type Period, type Query, type Topic } from "./query.ts";
import { spanOf } from "./when.ts";
import { putsIn, tellsBuying, tellsNeedOf } from "./work.ts";

const MANY = 100;
/** How many of the latest failures are looked through for ones that nobody dealt with. */
const FAILURES = 40;
/** How many of the latest pieces of work on a thing are looked through for one that took over. */
const LATER = 20;

const componentsIn = (topic: Topic) => (namesNothing(topic) ? {} : { components: stepsOf(topic).flat() });

/** Work on the same thing since then, unless it was surely elsewhere, has taken over. */
const hasLaterWork = (history: History, failed: KeptRecord): boolean =>
  history
    .records({ components: [failed.fields.component], kinds: ["repair"], limit: LATER })
    .some(
      (record) =>
        record.id > failed.id &&
        (record.line === failed.line ||
          comparePlaces(record.fields.where, failed.fields.where) !== "different"),
    );

const nobodyNotedIt = (open: readonly KeptRecord[], failed: KeptRecord): boolean =>
  !open.some((record) => record.fields.component === failed.fields.component);

/** Work that let go and that nothing has taken over from. */
const brokenFixes = (ground: Ground, topic: Topic, open: readonly KeptRecord[]): readonly KeptRecord[] =>
  ground.history
    .records({ ...componentsIn(topic), kinds: ["repair"], outcomes: ["failed"], limit: FAILURES })
    .filter((record) => record.closedBy === null && !record.settled && nobodyNotedIt(open, record))
    .filter((record) => !hasLaterWork(ground.history, record));

const openOnes = (ground: Ground, topic: Topic): readonly KeptRecord[] =>
  ground.history
    .records({ ...componentsIn(topic), open: true, limit: MANY })
    .filter((record) => placeFits(topic, record));

/** Whether a todo is meant for a stretch of time that was named from start to end. */
const isMeantFor = ({ fields }: KeptRecord, period: Period, hemisphere: Hemisphere): boolean => {
  const due = spanOf(fields.due, hemisphere);
  return (
    due !== undefined &&
    period.from !== null &&
    period.to !== null &&
    due.from.toString() < period.to &&
    due.to.toString() > period.from
  );
};

/** "On the list for the spring": what is meant for it; all that is open, where nothing is. */
const inTime = (
  ground: Ground,
  records: readonly KeptRecord[],
  period: Period | null,
): readonly KeptRecord[] => {
  const meant = period === null ? [] : records.filter((each) => isMeantFor(each, period, ground.hemisphere));
  return meant.length > 0 ? meant : records;
};

/** "What am I dragging my feet on": what only seems to be named is no part of the question, where nothing is open on it. */
const ofAllInstead = ({ named, systems, where }: Topic): boolean =>
  (named.length > 0 || systems.length > 0) && where.length === 0 && named.every(({ sure }) => sure < BY_NAME);

/** The open records that a list is made of, and what it is a list of. */
const listedOf = (
  ground: Ground,
  topic: Topic,
  keep: (record: KeptRecord) => boolean = () => true,
): { readonly topic: Topic; readonly open: readonly KeptRecord[]; readonly because: Answer["because"] } => {
  const open = openOnes(ground, topic).filter(keep);
  if (open.length > 0) return { topic, open, because: "found" };
  const elsewhere = ofAllInstead(topic) ? openOnes(ground, EMPTY_TOPIC).filter(keep) : [];
  return elsewhere.length > 0
    ? { topic: EMPTY_TOPIC, open: elsewhere, because: "open-elsewhere" }
    : { topic, open, because: "nothing-open" };
};

/** Every todo and fault not dealt with, and beside them the fixes that let go. */
export const answerOpen = (ground: Ground, query: Extract<Query, { ask: "open" }>): Answer => {
  const { topic, open, because } = listedOf(ground, query.topic);
  const records = inTime(ground, open, query.period);
  return answerTo(query, {
    records,
    count: records.length,
    because,
    letGo: brokenFixes(ground, topic, open),
  });
};

/** Whether the note says that something is to be got for it: its stuff, or anything where it tells of nothing else. */
const saysToBuy = (history: History, record: KeptRecord): boolean => {
  const note = history.note(record.noteId);
  if (note === undefined) return false;
  return (
    (note.recordIds.length === 1 && tellsBuying(note.text)) || tellsNeedOf(note.text, record.fields.materials)
  );
};

/** Whether something for it is still to be bought. */
export const isToBuy = (history: History, record: KeptRecord): boolean => {
  const { kind, action } = record.fields;
  if (record.got) return false;
  if (kind === "todo" && putsIn(action)) return true;
  return (kind === "todo" || kind === "fault") && saysToBuy(history, record);
};

/** Only what is to be replaced or bought. */
export const answerBuy = (ground: Ground, query: Extract<Query, { ask: "buy" }>): Answer => {
  const { open: records, because } = listedOf(ground, query.topic, (record) =>
    isToBuy(ground.history, record),
  );
  return answerTo(query, { records, count: records.length, because });
};
