import type { KeptRecord } from "../history.ts";
import type { Draft, Moment } from "../reading.ts";
import type { Again } from "./intent.ts";
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

/** Words for which end of the rig; the others of the table say which side. */
const ENDS: ReadonlySet<string> = new Set(["front", "rear", "back"]);

const turned = (where: string, turns: (word: string) => boolean): string =>
  where.replace(/[a-z]+/gi, (word) => {
    const plain = word.toLowerCase();
    return turns(plain) ? (OTHER[plain] ?? word) : word;
  });

/** "The other side" of a place is its opposite, where one is known; the other side of the left rear is the right rear. */
export const opposite = (where: string | null, said: string): string => {
  if (where === null) return said;
  const acrossOrAlong = /\bend\b/.test(said)
    ? [(word: string) => ENDS.has(word)]
    : [(word: string) => !ENDS.has(word), (word: string) => ENDS.has(word)];
  return acrossOrAlong.map((turns) => turned(where, turns)).find((place) => place !== where) ?? where;
};

/** The same work as a record's, done at another place on the day of speaking. Money and outcome are not carried over. */
export const workAgain = (
  kept: KeptRecord,
  { where, component, cost }: Again,
  text: string,
  moment: Moment,
): Draft => ({
  fields: {
    ...kept.fields,
    component: component ?? kept.fields.component,
    where: where !== null && isOther(where) ? opposite(kept.fields.where, where) : where,
    date:
      kept.fields.kind === "repair" && kept.saidAt.slice(0, 10) === moment.said.slice(0, 10)
        ? kept.fields.date
        : dayOf(moment).toString(),
    outcome: "untested",
    exposure: [],
    fault: component === null ? kept.fields.fault : null,
    cost,
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
