import { Temporal } from "temporal-polyfill";
import { changedDate } from "../../shared/memory/amend-date.ts";
import type { DateChange } from "../../shared/memory/correction.ts";
import { dayOf, spanOf } from "../../shared/memory/when.ts";
import type { Moment } from "../../shared/reading.ts";
import type { Edtf } from "../../shared/record.ts";
import type { Stretch, TimeRef } from "../read/scan.ts";
import { bareDate, type Offer, overlaps, type Said } from "./offer.ts";
import { plain } from "./pieces.ts";
import { shiftIn } from "./shift.ts";

/** Work that is done was not done on a day to come. */
const isAhead = (date: Edtf, moment: Moment): boolean => {
  const span = spanOf(date, moment.hemisphere);
  return span !== undefined && Temporal.PlainDate.compare(span.from, dayOf(moment)) > 0;
};

const dateOffer = (at: Stretch, to: DateChange, sort: string, { fields, moment }: Said): Offer[] => {
  const date = changedDate(to, fields.date, moment.hemisphere);
  return date === null || (fields.kind !== "todo" && isAhead(date, moment))
    ? []
    : [{ from: at.from, to: at.to, field: "date", change: { change: "date", to }, is: bareDate(date), sort }];
};

const shiftSort = (change: DateChange): string => Object.keys(change)[0] ?? "on";

const LAST_DAY = 31;

/** "The Wednesday", "in July": nearest to the day on record, on both sides of it, however long ago that was. */
const besideKept = (ref: TimeRef, said: Said): Offer[] => {
  const { again, edtf } = ref.time;
  const kept = spanOf(said.fields.date, said.moment.hemisphere);
  if (again === undefined || kept === undefined) return [];
  const near = { before: again(kept.to.subtract({ days: 1 }), -1), after: again(kept.from, 1) };
  return (["before", "after"] as const).flatMap((side) =>
    near[side] === edtf || (side === "after" && near.after === near.before)
      ? []
      : dateOffer(ref, { on: near[side] }, side, said),
  );
};

const YEAR_ONLY = /^\d{4}$/;
const MOST_WORDS = 4;

/** "'23, sorry": of work of which only the year is on record, another year. */
const yearOnly = (said: Said): Offer[] => {
  const { found, fields } = said;
  const [number, ...others] = found.numbers;
  const isYear =
    number !== undefined &&
    others.length === 0 &&
    YEAR_ONLY.test(fields.date ?? "") &&
    fields.cost === null &&
    /^\d\d$/.test(found.text.slice(number.span.start, number.span.end)) &&
    found.tokens.filter(({ kind }) => kind !== "mark").length <= MOST_WORDS &&
    !found.amounts.some((each) => overlaps(each, number));
  return isYear ? dateOffer(number, { on: `20${String(number.value).padStart(2, "0")}` }, "point", said) : [];
};

/** The days that a message names for a record: said outright, beside the one that it has, or counted from that. */
export const dates = (said: Said): Offer[] => {
  const { found } = said;
  const shift = shiftIn(plain(found.text));
  const whole = { from: 0, to: found.tokens.length };
  const days = found.numbers.filter(
    (number) =>
      number.kind === "ordinal" &&
      number.value <= LAST_DAY &&
      !found.times.some((ref) => overlaps(ref, number)),
  );
  return [
    ...found.times.flatMap((ref) => [
      ...dateOffer(ref, { on: ref.time.edtf }, ref.time.role, said),
      ...besideKept(ref, said),
    ]),
    ...yearOnly(said),
    ...days.flatMap((number) => dateOffer(number, { dayOfMonth: number.value }, "ordinal", said)),
    ...(shift === undefined ? [] : dateOffer(whole, shift, shiftSort(shift), said)),
  ];
};
