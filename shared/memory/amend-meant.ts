import type { KeptRecord } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { Edtf, RecordFields } from "../record.ts";
import type { Change, Correction } from "./correction.ts";
import { DENIES, gainsays } from "./gainsay.ts";
import { spanOf } from "./when.ts";

const isRuledOut = (record: KeptRecord, not: Partial<RecordFields>): boolean =>
  (Object.entries(not) as [keyof RecordFields, unknown][]).some(
    ([field, value]) => JSON.stringify(record.fields[field]) === JSON.stringify(value),
  );

/** How much a correction speaks against one record. */
export const speaksAgainst = (record: KeptRecord, { changes, not }: Correction): number =>
  changes.reduce((sum, change) => sum + gainsays(record, change), isRuledOut(record, not) ? DENIES : 0);

const farApart = (one: number, other: number): number => {
  const [small, large] = one < other ? [one, other] : [other, one];
  return large === 0 ? 0 : 1 - small / large;
};

const daysApart = (one: Edtf, other: Edtf | null, hemisphere: Hemisphere): number | undefined => {
  const [a, b] = [spanOf(one, hemisphere), spanOf(other, hemisphere)];
  return a === undefined || b === undefined ? undefined : Math.abs(a.from.until(b.from).days);
};

/** How far the value told lies from the one kept, where that can be measured: a slip is seldom far off. */
export const distanceTo = (
  record: KeptRecord,
  { changes }: Correction,
  hemisphere: Hemisphere,
): number | undefined => {
  for (const change of changes) {
    if (change.change === "date" && "on" in change.to)
      return daysApart(change.to.on, record.fields.date, hemisphere);
    const money = change.change === "fields" ? change.to.cost : undefined;
    if (money != null && record.fields.cost !== null) return farApart(money, record.fields.cost);
  }
  return undefined;
};

/** Changes that may well be meant for all that one message told. */
const isForAll = (change: Change): boolean => {
  if (change.change === "fields") return Object.keys(change.to).every((field) => field === "kind");
  return ["date", "done-by", "remove", "part", "join", "number"].includes(change.change);
};

const changedFields = (changes: readonly Change[]): readonly (keyof RecordFields)[] =>
  changes.flatMap((change) => {
    if (change.change === "fields") return Object.keys(change.to) as (keyof RecordFields)[];
    return change.change === "materials" || change.change === "phrase" ? (["materials"] as const) : [];
  });

const sayTheSame = (records: readonly KeptRecord[], correction: Correction): boolean => {
  const stated = ({ fields }: KeptRecord): string =>
    JSON.stringify(changedFields(correction.changes).map((field) => fields[field]));
  return new Set(records.map(stated)).size === 1 && records.some((record) => stated(record) !== "[null]");
};

const nearest = (
  records: readonly KeptRecord[],
  correction: Correction,
  hemisphere: Hemisphere,
): readonly KeptRecord[] => {
  const far = records.map((record) => distanceTo(record, correction, hemisphere));
  const known = far.filter((distance) => distance !== undefined);
  if (known.length < records.length) return records;
  return records.filter((_, at) => far[at] === Math.min(...known));
};

/** A day that was over when it was told is when work was done, one to come when something is due. */
const ofItsTime = (
  records: readonly KeptRecord[],
  { changes }: Correction,
  hemisphere: Hemisphere,
): readonly KeptRecord[] => {
  const [first] = changes;
  if (changes.length !== 1 || first?.change !== "date" || !("on" in first.to)) return records;
  const day = spanOf(first.to.on, hemisphere)?.from.toString();
  const fits = records.filter(
    ({ fields, saidAt }) => day !== undefined && (fields.kind === "todo") === day > saidAt.slice(0, DAY),
  );
  return fits.length > 0 ? fits : records;
};
const DAY = "2025-01-01".length;

const tellsThing = ({ changes }: Correction): boolean =>
  changes.some((change) => change.change === "fields" && change.to.component !== undefined);

/**
 * Of the records that one message told, those that a correction is about: the ones whose stated value it speaks against
 * most. Several are left when it may be any of them.
 */
export const meantAmong = (
  records: readonly KeptRecord[],
  correction: Correction,
  hemisphere: Hemisphere,
): { readonly meant: readonly KeptRecord[]; readonly unclear: boolean } => {
  const timely = ofItsTime(records, correction, hemisphere);
  const points = timely.map((record) => speaksAgainst(record, correction));
  const most = Math.max(...points);
  const tied = nearest(
    timely.filter((_, at) => points[at] === most),
    correction,
    hemisphere,
  );
  if (tied.length < 2 || correction.changes.every(isForAll) || sayTheSame(tied, correction))
    return { meant: tied, unclear: false };
  return tellsThing(correction) ? { meant: tied.slice(-1), unclear: false } : { meant: tied, unclear: true };
};
