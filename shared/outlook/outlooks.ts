import { Temporal } from "temporal-polyfill";
import type { KeptRecord, RecordId } from "../history.ts";
import { attemptOf, carriesLook } from "./attempt.ts";
import { believe, evidenceOf } from "./belief.ts";
import { addWeights, emptyWeights, type LogWeights } from "./grid.ts";
import { type Outlook, outlookFrom } from "./outlook.ts";
import { fixKindOf } from "./priors.ts";
import type { Rig } from "./rig.ts";

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
  const { record, line, peers } = input;
  const attempt = carriesLook(record) ? attemptOf(record, line, input) : undefined;
  if (attempt === undefined) return undefined;
  const sameLine = new Set([record.id, ...line.map(({ id }) => id)]);
  const known = (records: readonly KeptRecord[], all: readonly KeptRecord[]) =>
    records.flatMap((other) => (other.id === record.id ? [] : (attemptOf(other, all, input) ?? [])));
  const elsewhere = peers.filter(
    ({ id, fields }) => !sameLine.has(id) && fixKindOf(fields)?.id === attempt.kind.id,
  );
  const alike = known(elsewhere, peers).map(evidenceOf);
  const sum = emptyWeights();
  for (const weights of alike) addWeights(sum, weights, 1);
  const own = known(line, line).map(evidenceOf);
  const prediction = believe(attempt.kind, own, { sum, count: alike.length, without: [] }, input.settings);
  return outlookFrom(attempt, prediction, { ...input, notBefore: input.notBefore ?? null });
};

type Known = { readonly record: KeptRecord; readonly kindId: string; readonly weights: LogWeights };

const group = <T, K>(items: readonly T[], key: (item: T) => K): Map<K, T[]> => {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    const one = groups.get(key(item));
    if (one === undefined) groups.set(key(item), [item]);
    else one.push(item);
  }
  return groups;
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
  const lines = group(input.records, ({ line }) => line);
  const attempts = input.records.flatMap(
    (record) => attemptOf(record, lines.get(record.line) ?? [], input) ?? [],
  );
  const known: Known[] = attempts.map((attempt) => ({
    record: attempt.record,
    kindId: attempt.kind.id,
    weights: evidenceOf(attempt),
  }));
  const byLine = group(known, ({ record }) => record.line);
  const byKind = new Map(
    [...group(known, ({ kindId }) => kindId)].map(([kindId, all]) => {
      const sum = emptyWeights();
      for (const { weights } of all) addWeights(sum, weights, 1);
      return [kindId, { sum, count: all.length }] as const;
    }),
  );
  const outlooks = attempts
    .filter(({ record }) => carriesLook(record))
    .map((attempt) => {
      const { record, kind } = attempt;
      const line = byLine.get(record.line) ?? [];
      const all = byKind.get(kind.id) ?? { sum: emptyWeights(), count: 0 };
      const without = line.filter(({ kindId }) => kindId === kind.id).map(({ weights }) => weights);
      const earlier = line.filter((other) => other.record.id !== record.id).map(({ weights }) => weights);
      const prediction = believe(kind, earlier, { ...all, without }, input.settings);
      return outlookFrom(attempt, prediction, {
        ...input,
        notBefore: input.notBefore?.get(record.id) ?? null,
      });
    });
  return outlooks.toSorted((a, b) => Temporal.PlainDate.compare(a.nextLook.day, b.nextLook.day));
};
