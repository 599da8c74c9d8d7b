import { Temporal } from "temporal-polyfill";
import type { KeptRecord } from "../history.ts";
import type { CareChoice, CareDue, CareInput, Done } from "./care-choice.ts";
import { CARE_ROWS, type CareRow } from "./care-table.ts";
import { byEvent, byInterval, bySeason, byTrip, byWork, firstTime } from "./care-when.ts";
import { lastWork, latest, touches } from "./care-work.ts";
import { type Day, dateOf, dayOf } from "./days.ts";

const lastDone = (row: CareRow, choice: CareChoice, input: CareInput): Done | undefined => {
  const told = lastWork(input, row.components, row.resets);
  const ticked = choice.done ? { day: dayOf(choice.done), record: null } : undefined;
  return latest([told, ticked].filter((one) => one !== undefined));
};

const ageGate = (row: CareRow, input: CareInput): Day => {
  if (row.fromNewDays === undefined) return Number.NEGATIVE_INFINITY;
  const fitted = lastWork(input, row.components, ["replace", "install"]);
  return fitted === undefined ? Number.NEGATIVE_INFINITY : fitted.day + row.fromNewDays;
};

const hasInterval = ({ every }: CareRow) => Object.keys(every).length > 0;

/** Nobody is asked about care in the moment of switching it on. */
const FIRST_DAYS = 1;

const dueOf = (row: CareRow, choice: CareChoice, input: CareInput): CareDue | undefined => {
  const done = lastDone(row, choice, input);
  const since = done?.day ?? dayOf(choice.since);
  const candidates = [
    ...(done === undefined ? [] : byInterval(row, done, input.use)),
    ...bySeason(row, since, input.hemisphere),
    ...byTrip(row, done, input),
    ...byWork(row, done, input),
    ...byEvent(row, done, input),
  ];
  if (done === undefined && hasInterval(row)) candidates.push(firstTime(row, choice));
  const first = candidates.toSorted((a, b) => a.day - b.day)[0];
  if (first === undefined) return undefined;
  const notBefore = choice.notBefore ? dayOf(choice.notBefore) : Number.NEGATIVE_INFINITY;
  const day = Math.max(first.day, ageGate(row, input), notBefore, dayOf(choice.since) + FIRST_DAYS);
  return {
    row,
    due: dateOf(day),
    reason: first.reason,
    lastDone: done === undefined ? null : dateOf(done.day),
    lastRecord: done?.record ?? null,
    why: first.why,
  };
};

/** When each row of care that is switched on falls due, soonest first; rows that only concern trips are left out when none is near. */
export const careDue = (input: CareInput): readonly CareDue[] => {
  const rows = new Map(CARE_ROWS.map((row) => [row.id, row]));
  const due = input.choices.flatMap((choice) => {
    const row = rows.get(choice.row);
    return (row && dueOf(row, choice, input)) ?? [];
  });
  return due.toSorted((a, b) => Temporal.PlainDate.compare(a.due, b.due));
};

/** The rows that a told piece of work answers. */
export const careAnswered = (record: KeptRecord): readonly CareRow["id"][] =>
  CARE_ROWS.filter((row) => touches(record, row.components, row.resets)).map(({ id }) => id);
