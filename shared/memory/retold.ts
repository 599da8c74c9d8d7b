import { Temporal } from "temporal-polyfill";
import type { KeptRecord } from "../history.ts";
import type { RecordFields } from "../record.ts";
import { compareLoosely, compareMaterials } from "./materials.ts";
import { meet, particularsOf } from "./part.ts";
import { comparePlaces } from "./place.ts";
import { isLive, type Told } from "./told.ts";
import { compareWhen, spanDays, spanOf, type WhenLikeness } from "./when.ts";
import { isCure, sameAction, tellsAnother, tellsOther, tellsReturn, tellsStill } from "./work.ts";

const WHEN_POINTS: Record<WhenLikeness, number> = { same: 3, within: 2, near: 1, unknown: 0, apart: -9 };

/** From what a record and a later account of work share: above 0 they may be one, more is surer. */
const likeness = (told: Told, kept: KeptRecord): number => {
  const { fields } = told.draft;
  const compare = hasFailed(told) ? compareLoosely : compareMaterials;
  const stuff = namesStuffOf(told, kept) ? "same" : compare(stuffOf(told), kept.fields.materials);
  if (stuff === "different" && fields.materials.length > 0) return -9;
  const when =
    (saidNow(told) && (tellsStill(told.words) || hasFailed(told))) ||
    isLooselyDated(told) ||
    isDayOfFailing(told, kept)
      ? "unknown"
      : compareWhen(fields.date, kept.fields.date, told.hemisphere, told.today);
  return (
    WHEN_POINTS[when] +
    (stuff === "same" ? 2 : 0) +
    (fields.action === kept.fields.action ? 1 : 0) +
    (comparePlaces(fields.where, kept.fields.where) === "same" ? 1 : 0) +
    (meet(particularsOf(fields, told.words), particularsOf(kept.fields)) ? 1 : 0) +
    (onlyLetGo(told) && kept.fields.outcome !== "failed" ? 0.5 : 0)
  );
};

/** The stuff that a word on earlier work names may have been read as anything. */
const stuffOf = (told: Told): readonly string[] => {
  const { materials } = told.draft.fields;
  return materials.length === 0 && tellsStill(told.words) ? [told.words] : materials;
};

/** "The butyl has held all through December": a loose time of work that only holds is mostly that of its holding. */
const isLooselyDated = ({ draft: { fields }, words, hemisphere }: Told): boolean => {
  const span = spanOf(fields.date, hemisphere);
  return (
    span !== undefined &&
    (spanDays(span) > 1 || fields.date?.endsWith("~") === true) &&
    fields.outcome === "holding" &&
    fields.cost === null &&
    fields.materials.length > 0 &&
    isCure(fields.action) &&
    !tellsReturn(words)
  );
};

/** A word on how work does names its stuff, whatever was read as such: "the fiberglass I laid in May hasn't moved". */
const namesStuffOf = (told: Told, kept: KeptRecord): boolean =>
  tellsStill(told.words) && compareMaterials([told.words], kept.fields.materials) === "same";

/** As long, in days, as a failing may lie back that is told with its day. */
const LATELY = 31;

/** "The rivets gave way on Thursday": the day told is that of the failing, and not that of the work. */
const isDayOfFailing = (told: Told, kept: KeptRecord): boolean => {
  const { fields } = told.draft;
  const [when, done] = [spanOf(fields.date, told.hemisphere), spanOf(kept.fields.date, told.hemisphere)];
  return (
    hasFailed(told) &&
    fields.cost === null &&
    isLive(kept) &&
    when !== undefined &&
    done !== undefined &&
    Temporal.PlainDate.compare(when.from, done.to) >= 0 &&
    when.from.until(told.today).days <= LATELY
  );
};

/** Said of today, or of a stretch that it lies in: "this week". */
const saidNow = (told: Told): boolean => {
  const span = spanOf(told.draft.fields.date, told.hemisphere);
  return (
    span !== undefined &&
    Temporal.PlainDate.compare(span.from, told.today) <= 0 &&
    Temporal.PlainDate.compare(told.today, span.to) < 0 &&
    spanDays(span) <= WEEK
  );
};
const WEEK = 7;

const saidToday = (told: Told): boolean => told.draft.fields.date === told.today.toString();

/** Work that has failed was done before, whenever it was told. */
const hasFailed = (told: Told): boolean => told.draft.fields.outcome === "failed";

/** Work told as just done is new work, unless the same was told the same day. */
const justDone = (told: Told): boolean => saidToday(told) && !hasFailed(told);

const enough = (told: Told, kept: KeptRecord, points: number): boolean => {
  const { fields } = told.draft;
  if (tellsStill(told.words)) return kept.closedBy === null && points >= 1;
  if (justDone(told)) return points >= 4 && kept.fields.date === fields.date && !tellsReturn(told.words);
  return points >= 2 || (fields.date === null && points >= 1);
};

/** "The tape gave up": work that is only named by what let go, whatever was done with it. */
const onlyLetGo = (told: Told): boolean =>
  hasFailed(told) && (told.draft.fields.date === null || saidToday(told));

/** "The plywood that went in in May is solid": stuff and time of work on record, whatever the work is called now. */
const holdsSince = (told: Told, record: KeptRecord): boolean => {
  const { fields } = told.draft;
  if (fields.outcome !== "holding" || !isCure(fields.action) || !isCure(record.fields.action)) return false;
  const when = compareWhen(fields.date, record.fields.date, told.hemisphere, told.today);
  return (
    (when === "same" || when === "within") &&
    !saidToday(told) &&
    compareMaterials(fields.materials, record.fields.materials) === "same"
  );
};

/** A word on how work does may name the work loosely ("since the butyl went in", "that cement cracked"). */
const mayBeOne = (told: Told, record: KeptRecord): boolean =>
  sameAction(told.draft.fields.action, record.fields.action) ||
  holdsSince(told, record) ||
  (tellsStill(told.words) && compareMaterials([told.words], record.fields.materials) === "same") ||
  (onlyLetGo(told) && compareLoosely(told.draft.fields.materials, record.fields.materials) === "same");

/** The one fix of a thing that has not let go by now, if it is one. */
const onlyLiveFix = (kept: readonly KeptRecord[]): KeptRecord | undefined => {
  const [one, ...others] = kept.filter((record) => isLive(record) && isCure(record.fields.action));
  return others.length === 0 ? one : undefined;
};

/** "The rivets have sheared": what let go before it was done over, whatever that work was called, is the one fix there was. */
const isTheOneThatLetGo = (told: Told, record: KeptRecord, only: KeptRecord | undefined): boolean =>
  onlyLetGo(told) &&
  record === only &&
  isCure(told.draft.fields.action) &&
  comparePlaces(told.draft.fields.where, record.fields.where) !== "different" &&
  compareLoosely(told.draft.fields.materials, record.fields.materials) !== "different";

/** Records of work that this account of work may tell again, the likeliest first. */
export const retoldRepairs = (told: Told, kept: readonly KeptRecord[]): readonly KeptRecord[] => {
  if (told.draft.fields.kind !== "repair") return [];
  if (onlyLetGo(told) ? tellsOther(told.close) : tellsAnother(told.close)) return [];
  const only = onlyLiveFix(kept);
  const letGo = (record: KeptRecord): boolean => isTheOneThatLetGo(told, record, only);
  return kept
    .filter((record) => record.fields.kind === "repair" && (mayBeOne(told, record) || letGo(record)))
    .map((record) => ({ record, points: likeness(told, record) + (letGo(record) ? 1 : 0) }))
    .filter(({ record, points }) => points > 0 && enough(told, record, points))
    .sort((a, b) => b.points - a.points)
    .map(({ record }) => record);
};

const sameIntent = (told: RecordFields, kept: RecordFields): boolean =>
  sameAction(told.action, kept.action) && compareMaterials(told.materials, kept.materials) !== "different";

/** The open todo or fault that this one tells again. */
export const retoldOpen = (told: Told, open: readonly KeptRecord[]): KeptRecord | undefined => {
  const { fields } = told.draft;
  if (fields.kind !== "todo" && fields.kind !== "fault") return undefined;
  const about = particularsOf(fields, told.words);
  return open.find((record) => {
    if (record.fields.kind === "todo" && fields.kind === "todo") return sameIntent(fields, record.fields);
    const other = particularsOf(record.fields);
    return meet(about, other) || about.trouble.size === 0 || other.trouble.size === 0;
  });
};

const isEmpty = (value: unknown): boolean => value === null || (Array.isArray(value) && value.length === 0);

const FILLABLE = ["where", "materials", "date", "cost", "fault", "due"] as const;

/** Fields that were empty and are told now; a vague date gives way to a sharper one within it, and a sum to the one told later. */
export const newlyTold = (told: Told, kept: RecordFields): Partial<RecordFields> => {
  const { fields } = told.draft;
  if (fields.kind === "check")
    return kept.where === null && fields.where !== null ? { where: fields.where } : {};
  const filled = FILLABLE.filter((field) => isEmpty(kept[field]) && !isEmpty(fields[field]));
  const sharper =
    kept.date !== null &&
    fields.date !== null &&
    fields.date.length > kept.date.replace("~", "").length &&
    compareWhen(fields.date, kept.date, told.hemisphere, told.today) === "within";
  return {
    ...Object.fromEntries(filled.map((field) => [field, fields[field]])),
    ...(sharper ? { date: fields.date } : {}),
    ...(kept.cost !== null && fields.cost !== null && fields.cost > 0 && fields.cost !== kept.cost
      ? { cost: fields.cost }
      : {}),
  };
};
