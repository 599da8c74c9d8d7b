import type { KeptRecord, Verdict } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import { ageBetween } from "./age.ts";
import { type Day, dayOfInstant, daysOf } from "./days.ts";
import type { Observation } from "./life.ts";
import { observe } from "./observe.ts";
import { type FixKind, fixKindOf } from "./priors.ts";
import { type Seen, type Setting, seenOf, verdictsOf } from "./seen.ts";
import { type Wear, wearOf } from "./wear.ts";

/** One fix and what is known of its life. */
export type Attempt = {
  readonly record: KeptRecord;
  readonly kind: FixKind;
  readonly wear: Wear;
  readonly start: Day;
  readonly toldOn: Day;
  /** Told of so much later that no word of trouble is weak evidence of its holding then. */
  readonly retold: boolean;
  /** Oldest first. */
  readonly looks: readonly Seen[];
  readonly observation: Observation;
};

const RETOLD_AFTER_DAYS = 30;
/** Half of the time over which work without any date is taken to lie back. */
const UNDATED_DAYS_AGO = 180;

const startOf = (record: KeptRecord, toldOn: Day, hemisphere: Hemisphere): Day => {
  const { date } = record.fields;
  const span = date === null ? undefined : daysOf(date, hemisphere);
  if (span === undefined) return toldOn - UNDATED_DAYS_AGO;
  const [first, last] = [Math.min(span[0], toldOn), Math.min(span[1], toldOn)];
  return Math.floor((first + last) / 2);
};

/** When another fix took over, as a verdict if this one had failed without anybody having said when. */
const takenOver = (record: KeptRecord, line: readonly KeptRecord[]): string | undefined =>
  record.closedBy === null ? undefined : line.find(({ id }) => id === record.closedBy)?.saidAt;

/** A failure of which no verdict was kept came to light when another fix took over. */
const looksAt = (record: KeptRecord, ended: string | undefined): readonly Verdict[] => {
  const { verdicts, fields } = record;
  if (ended === undefined || fields.outcome !== "failed") return verdictsOf(record);
  if (verdicts.some(({ outcome }) => outcome === "failed")) return verdicts;
  return [
    ...verdicts,
    { outcome: "failed", when: ended.slice(0, 10), saidAt: ended, exposure: fields.exposure, noteId: null },
  ];
};

/** Reads a record as an attempt at a fix; undefined when it is work that has no life of its own. */
export const attemptOf = (
  record: KeptRecord,
  line: readonly KeptRecord[],
  setting: Setting,
): Attempt | undefined => {
  const kind = record.removed ? undefined : fixKindOf(record.fields);
  if (kind === undefined) return undefined;
  const { use, hemisphere } = setting;
  const wear = wearOf(record.fields.component);
  const toldOn = dayOfInstant(record.saidAt);
  const start = startOf(record, toldOn, hemisphere);
  const ended = takenOver(record, line);
  const looks = looksAt(record, ended).map((verdict) => seenOf(verdict, start, wear, setting));
  const retold = toldOn - start >= RETOLD_AFTER_DAYS;
  const end = Math.max(start, ended === undefined ? use.today : dayOfInstant(ended));
  const age = ageBetween(wear, use, start, end);
  const retoldAge = retold ? ageBetween(wear, use, start, toldOn) : 0;
  const observation = observe(looks, { age, retoldAge, hidden: wear.hidden });
  return { record, kind, wear, start, toldOn, retold, looks, observation };
};

/** Whether a piece of work is still in service. */
export const inService = ({ fields, removed, closedBy }: KeptRecord): boolean =>
  !removed && closedBy === null && fields.outcome !== "failed";

/** Whether a record is a fix in service that is to be looked at. */
export const carriesLook = (record: KeptRecord): boolean =>
  inService(record) && fixKindOf(record.fields) !== undefined;
