import type { Temporal } from "temporal-polyfill";
import type { KeptRecord, LineId, RecordId } from "../history.ts";
import { type Attempt, attemptOf, carriesLook, inService } from "./attempt.ts";
import { believe } from "./belief.ts";
import { dayOf } from "./days.ts";
import { type Evidence, evidenceOf } from "./grid.ts";
import { lessonsOf } from "./lessons.ts";
import { type Outlook, outlookFrom } from "./outlook.ts";
import { fixKindOf } from "./priors.ts";
import type { Rig } from "./rig.ts";

/** An attempt that is known, and what was seen of it. */
type Known = { readonly attempt: Attempt; readonly evidence: Evidence };

const knownOf = (attempt: Attempt): Known => ({
  attempt,
  evidence: evidenceOf(attempt.kind, attempt.observation),
});

const group = <T, K>(items: readonly T[], key: (item: T) => K): Map<K, T[]> => {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    const one = groups.get(key(item));
    if (one === undefined) groups.set(key(item), [item]);
    else one.push(item);
  }
  return groups;
};

const lineOf = ({ attempt }: Known): LineId => attempt.record.line;

const evidence = (known: readonly Known[]): readonly Evidence[] => known.map((one) => one.evidence);

/** The evidence of one kind of fix, line by line. */
const byLine = (alike: readonly Known[]): ReadonlyMap<LineId, readonly Evidence[]> =>
  new Map([...group(alike, lineOf)].map(([line, all]) => [line, evidence(all)]));

/**
 * The outlook of one fix; undefined when the record carries no look (removed, superseded, failed, or no fix).
 * @param line every attempt on the same trouble, the record itself allowed among them
 * @param peers other records of the rig; those done in the same way count, with less weight
 * @param notBefore the day until which it was put off, if it was
 */
export const outlookOf = (
  input: Rig & {
    readonly record: KeptRecord;
    readonly line: readonly KeptRecord[];
    readonly peers: readonly KeptRecord[];
    readonly notBefore?: Temporal.PlainDate | null;
  },
): Outlook | undefined => {
  const { record, line, peers, settings } = input;
  const attempt = carriesLook(record) ? attemptOf(record, line, input) : undefined;
  if (attempt === undefined) return undefined;
  const sameLine = new Set([record.id, ...line.map(({ id }) => id)]);
  const known = (records: readonly KeptRecord[], all: readonly KeptRecord[]) =>
    records.flatMap((other) => {
      const one = other.id === record.id ? undefined : attemptOf(other, all, input);
      return one === undefined ? [] : [knownOf(one)];
    });
  const elsewhere = peers.filter(
    ({ id, fields }) => !sameLine.has(id) && fixKindOf(fields)?.id === attempt.kind.id,
  );
  const lessons = lessonsOf(attempt.kind, byLine(known(elsewhere, peers)), settings.rigShare);
  const earlier = evidence(known(line, line));
  const prediction = believe(lessons, null, earlier);
  return outlookFrom(attempt, prediction, { ...input, notBefore: input.notBefore ?? null });
};

/**
 * The outlooks of all fixes of a rig that carry a look, soonest first. Same results as `outlookOf` with every record
 * given as peers, in one pass.
 */
export const outlooksOf = (
  input: Rig & {
    readonly records: readonly KeptRecord[];
    readonly notBefore?: ReadonlyMap<RecordId, Temporal.PlainDate>;
  },
): readonly Outlook[] => {
  const { records, use, trip, settings } = input;
  const lines = group(records, ({ line }) => line);
  const known = records.flatMap((record) => {
    const attempt = attemptOf(record, lines.get(record.line) ?? [], input);
    return attempt === undefined ? [] : [knownOf(attempt)];
  });
  const onLine = group(known, lineOf);
  const lessons = new Map(
    [...group(known, ({ attempt }) => attempt.kind)].map(([kind, alike]) => [
      kind,
      lessonsOf(kind, byLine(alike), settings.rigShare),
    ]),
  );
  const outlooks = known
    .filter(({ attempt }) => inService(attempt.record))
    .map((one) => {
      const { record, kind } = one.attempt;
      const earlier = (onLine.get(record.line) ?? []).filter((other) => other !== one);
      const taught = lessons.get(kind) ?? lessonsOf(kind, new Map(), settings.rigShare);
      const prediction = believe(taught, record.line, evidence(earlier));
      const notBefore = input.notBefore?.get(record.id) ?? null;
      return outlookFrom(one.attempt, prediction, { use, trip, settings, notBefore });
    });
  return outlooks
    .map((outlook) => ({ outlook, day: dayOf(outlook.nextLook.day) }))
    .toSorted((a, b) => a.day - b.day)
    .map(({ outlook }) => outlook);
};
