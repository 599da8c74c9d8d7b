import type { KeptRecord } from "../history.ts";
import type { Draft, Moment } from "../reading.ts";
import { dayOf } from "./when.ts";

const OTHER: Readonly<Record<string, string>> = {
  left: "right",
  right: "left",
  front: "rear",
  rear: "front",
  back: "front",
  driver: "passenger",
  drivers: "passenger",
  passenger: "driver",
  street: "curb",
  curb: "street",
  nearside: "offside",
  offside: "nearside",
  roadside: "curbside",
  curbside: "roadside",
  upper: "lower",
  lower: "upper",
};

export const isOther = (where: string): boolean => /\bother (?:side|end|one)\b/.test(where);

/** "The other side" of a place is its opposite, where one is known. */
export const opposite = (where: string | null, said: string): string =>
  where === null ? said : where.replace(/[a-z]+/gi, (word) => OTHER[word.toLowerCase()] ?? word);

/** The same work as a record's, done at another place on the day of speaking. Money and outcome are not carried over. */
export const workAgain = (kept: KeptRecord, where: string, text: string, moment: Moment): Draft => ({
  fields: {
    ...kept.fields,
    where: isOther(where) ? opposite(kept.fields.where, where) : where,
    date:
      kept.fields.kind === "repair" && kept.saidAt.slice(0, 10) === moment.said.slice(0, 10)
        ? kept.fields.date
        : dayOf(moment).toString(),
    outcome: "untested",
    exposure: [],
    cost: null,
    due: null,
  },
  evidence: {
    where: { spans: [], sure: 0.8, rule: "again-elsewhere" },
    component: { spans: [], sure: 0.8, rule: "again-elsewhere" },
  },
  span: { start: 0, end: text.length },
  brands: kept.brands,
  doneBy: kept.doneBy,
});
