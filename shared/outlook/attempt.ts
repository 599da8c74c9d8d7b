import type { KeptRecord, Verdict } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { Exposure } from "../record.ts";
import { ageBetween, mixedAge } from "./age.ts";
import { type Day, dayOfInstant, daysOf } from "./days.ts";
import { halfGood, letGo, noNews, type Observation, stillGood } from "./life.ts";
import { type FixKind, fixKindOf } from "./priors.ts";
import { wornOf } from "./units.ts";
import type { Use } from "./use.ts";
import { type Wear, wearOf } from "./wear.ts";

/** A look at the fix that was answered. */
export type Seen = {
  readonly day: Day;
  /** Age of the fix then, in days at the typical pace. */
  readonly age: number;
  readonly outcome: Verdict["outcome"];
  /** The age is a lifetime that was told ("held for two trips"), not the time of the look. */
  readonly told: boolean;
};

/** One fix and what is known of its life. */
export type Attempt = {
  readonly record: KeptRecord;
  readonly kind: FixKind;
  readonly wear: Wear;
  readonly start: Day;
  readonly toldOn: Day;
  /** Oldest first. */
  readonly looks: readonly Seen[];
  readonly observation: Observation;
};

export type Setting = { readonly use: Use; readonly hemisphere: Hemisphere };

/** Work told of so much later is a memory: no word of trouble then is weak evidence that it held. */
const RETOLD_AFTER_DAYS = 30;
/** Half of the time over which work without any date is taken to lie back. */
const UNDATED_DAYS_AGO = 180;
/** Chance that an owner who retells old work would not mention that it had failed. */
export const UNMENTIONED = 0.3;
/** How far off a told lifetime may be. */
const TOLD_BAND = [0.7, 1.3] as const;

const startOf = (record: KeptRecord, toldOn: Day, hemisphere: Hemisphere): Day => {
  const { date } = record.fields;
  const span = date === null ? undefined : daysOf(date, hemisphere);
  if (span === undefined) return toldOn - UNDATED_DAYS_AGO;
  const [first, last] = [Math.min(span[0], toldOn), Math.min(span[1], toldOn)];
  return Math.floor((first + last) / 2);
};

/** The verdicts that were kept; a verdict given with the record itself counts on the day it was told. */
const verdictsOf = ({ fields, verdicts, saidAt, noteId }: KeptRecord): readonly Verdict[] => {
  if (verdicts.length > 0 || fields.outcome === null || fields.outcome === "untested") return verdicts;
  return [{ outcome: fields.outcome, when: saidAt.slice(0, 10), saidAt, exposure: fields.exposure, noteId }];
};

const exposedAge = (
  wear: Wear,
  exposure: readonly Exposure[],
  calendarDays: number,
  useDays: number,
): number => {
  let [calendar, use] = [calendarDays, useDays];
  for (const amount of exposure) {
    const worn = wornOf(amount);
    if ("calendarDays" in worn)
      [calendar, use] = [worn.calendarDays, (use * worn.calendarDays) / Math.max(calendar, 1)];
    else if (wear.axis !== "calendar") use = worn.useDays;
  }
  return mixedAge(wear, calendar, use);
};

const seenOf = (verdict: Verdict, start: Day, wear: Wear, { use, hemisphere }: Setting): Seen => {
  const said = dayOfInstant(verdict.saidAt);
  const span = daysOf(verdict.when, hemisphere);
  const day = Math.max(
    start,
    span === undefined ? said : Math.min(Math.floor((span[0] + span[1]) / 2), said),
  );
  const counted = ageBetween(wear, use, start, day);
  const useDays = wear.useShare === 0 ? 0 : (counted - (1 - wear.useShare) * (day - start)) / wear.useShare;
  const exposed = verdict.exposure.length > 0;
  const age = exposed ? exposedAge(wear, verdict.exposure, day - start, useDays) : counted;
  return { day, age, outcome: verdict.outcome, told: exposed };
};

/** The one observation that a fix's looks amount to; nested looks carry nothing that the last ones do not. */
const observe = (looks: readonly Seen[], silence: Observation): Observation => {
  const last = looks.at(-1);
  if (last === undefined) return silence;
  const good = looks
    .filter((look) => look.outcome === "holding")
    .reduce((oldest, look) => Math.max(oldest, look.age), 0);
  if (last.outcome === "holding") return stillGood(good);
  if (last.outcome === "partly") return halfGood(Math.min(good, last.age), last.age);
  if (last.told) return letGo(Math.min(good, TOLD_BAND[0] * last.age), TOLD_BAND[1] * last.age);
  return letGo(Math.min(good, last.age), last.age);
};

/** A fix that another took over from because it had failed, without anybody having said when. */
const endedBy = (record: KeptRecord, line: readonly KeptRecord[]): string | undefined => {
  if (record.closedBy === null || record.fields.outcome !== "failed") return undefined;
  return line.find(({ id }) => id === record.closedBy)?.saidAt;
};

/** Reads a record as an attempt at a fix; undefined when it is work that has no life of its own. */
export const attemptOf = (
  record: KeptRecord,
  line: readonly KeptRecord[],
  setting: Setting,
): Attempt | undefined => {
  const kind = record.removed ? undefined : fixKindOf(record.fields);
  if (kind === undefined) return undefined;
  const wear = wearOf(record.fields.component);
  const toldOn = dayOfInstant(record.saidAt);
  const start = startOf(record, toldOn, setting.hemisphere);
  const looks = verdictsOf(record).map((verdict) => seenOf(verdict, start, wear, setting));
  const ended = endedBy(record, line);
  if (ended !== undefined && looks.every(({ outcome }) => outcome !== "failed")) {
    const verdict: Verdict = {
      outcome: "failed",
      when: ended.slice(0, 10),
      saidAt: ended,
      exposure: [],
      noteId: null,
    };
    looks.push(seenOf(verdict, start, wear, setting));
  }
  const retold = toldOn - start >= RETOLD_AFTER_DAYS;
  const silence = noNews(retold ? ageBetween(wear, setting.use, start, toldOn) : 0, UNMENTIONED);
  return { record, kind, wear, start, toldOn, looks, observation: observe(looks, silence) };
};

/** Whether a record is a fix in service that is to be looked at. */
export const carriesLook = ({ fields, removed, closedBy }: KeptRecord): boolean =>
  !removed && closedBy === null && fields.outcome !== "failed" && fixKindOf(fields) !== undefined;
