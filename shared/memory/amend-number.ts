import type { KeptRecord, KeptUsage } from "../history.ts";
import type { Usage } from "../record.ts";
import type { Amend } from "./amendment.ts";
import type { Change } from "./correction.ts";

type NumberChange = Extract<Change, { change: "number" }>;

/** A number that was told, and how to change it. */
type Told = { readonly value: number; readonly isUse: boolean; readonly amend: (to: number) => Amend };

const amountOf = (usage: Usage): number => ("reading" in usage ? usage.reading : usage.count);

const withValue = (usage: Usage, value: number, change: NumberChange): Usage => {
  const unit = change.unit ?? usage.unit;
  return "reading" in usage ? { ...usage, reading: value, unit } : { ...usage, count: value, unit };
};

const toldUse = (usage: readonly KeptUsage[], change: NumberChange): readonly Told[] =>
  usage.map((entry) => ({
    value: amountOf(entry.usage),
    isUse: true,
    amend: (to) => ({ do: "use", entry, to: withValue(entry.usage, to, change) }),
  }));

const toldMoney = (records: readonly KeptRecord[]): readonly Told[] =>
  records.flatMap((record) =>
    record.fields.cost === null
      ? []
      : [
          {
            value: record.fields.cost,
            isUse: false,
            amend: (to): Amend => ({
              do: "set",
              record: record.id,
              field: "cost",
              from: record.fields.cost,
              to,
            }),
          },
        ],
  );

const toldExposure = (records: readonly KeptRecord[], change: NumberChange): readonly Told[] =>
  records.flatMap((record) =>
    record.fields.exposure.slice(0, 1).map((exposure) => ({
      value: exposure.count,
      isUse: true,
      amend: (count: number): Amend => ({
        do: "set",
        record: record.id,
        field: "exposure",
        from: record.fields.exposure,
        to: [{ count, unit: change.unit ?? exposure.unit }, ...record.fields.exposure.slice(1)],
      }),
    })),
  );

const ratio = (one: number, other: number): number => {
  const [small, large] = one < other ? [one, other] : [other, one];
  return large === 0 ? 1 : small / large;
};

/** Where no number was told at all, one given for work is what it cost. */
const priced = (records: readonly KeptRecord[], cost: number): readonly Amend[] => {
  const [record, ...others] = records.filter(({ fields }) => fields.kind === "repair");
  return record === undefined || others.length > 0
    ? []
    : [{ do: "set", record: record.id, field: "cost", from: null, to: cost }];
};

/** The number told that the new one stands for: the one denied, else the one of its kind, else the closest in size. */
export const amendNumber = (
  records: readonly KeptRecord[],
  usage: readonly KeptUsage[],
  change: NumberChange,
): readonly Amend[] => {
  const told = [...toldUse(usage, change), ...toldExposure(records, change), ...toldMoney(records)];
  const denied = told.filter(({ value }) => value === change.instead);
  const fits = denied.length > 0 ? denied : change.unit === null ? told : told.filter(({ isUse }) => isUse);
  const { to } = change;
  const best = [...fits].sort((a, b) => (to === null ? 0 : ratio(b.value, to) - ratio(a.value, to)))[0];
  if (best !== undefined) {
    const value = to ?? best.value;
    return !best.isUse && value === best.value ? [] : [best.amend(value)];
  }
  return told.length === 0 && change.unit === null && to !== null ? priced(records, to) : [];
};
