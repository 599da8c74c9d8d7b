import type { KeptRecord } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { CareInput, Done } from "./care-choice.ts";
import { type Day, dayOfInstant, daysOf } from "./days.ts";

const workDay = (record: KeptRecord, hemisphere: Hemisphere): Day => {
  const span = record.fields.date === null ? undefined : daysOf(record.fields.date, hemisphere);
  return span === undefined ? dayOfInstant(record.saidAt) : Math.floor((span[0] + span[1]) / 2);
};

const WORK = new Set(["repair", "check"]);

export const touches = (
  record: KeptRecord,
  components: readonly string[],
  actions: readonly string[],
): boolean =>
  !record.removed &&
  WORK.has(record.fields.kind) &&
  record.fields.action !== null &&
  components.includes(record.fields.component) &&
  actions.includes(record.fields.action);

export const latest = (days: readonly Done[]): Done | undefined =>
  days.reduce<Done | undefined>(
    (last, one) => (last === undefined || one.day > last.day ? one : last),
    undefined,
  );

export const lastWork = (
  input: CareInput,
  components: readonly string[],
  actions: readonly string[],
): Done | undefined =>
  latest(
    input.records
      .filter((record) => touches(record, components, actions))
      .map((record) => ({ day: workDay(record, input.hemisphere), record: record.id })),
  );
