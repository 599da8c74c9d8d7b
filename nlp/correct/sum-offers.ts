import { mayBeInCents } from "../read/prices.ts";
import type { Scan, Stretch } from "../read/scan.ts";
import { isNumberOf } from "./numbered.ts";
import { type Offer, overlaps, type Said } from "./offer.ts";
import { DENIES } from "./rated.ts";
import { wayOf, workedOut } from "./worked-out.ts";

/** "Twenty twenty three": a year, and no sum. */
const FIRST_YEAR = 1990;
const LAST_YEAR = 2049;
const isYear = (number: Scan["numbers"][number]): boolean =>
  number.kind === "run" && number.value >= FIRST_YEAR && number.value <= LAST_YEAR;

/** How often the one sum goes into the other. */
const farFrom = (sum: number, kept: number): number => Math.abs(Math.log(sum / kept));

/** "He took one twenty", of a hundred and forty: no one and twenty hundredths. */
const asCents = (number: Scan["numbers"][number], kept: number | null): boolean =>
  mayBeInCents(number) &&
  (kept === null || kept === 0 || farFrom(number.value / 100, kept) < farFrom(number.value, kept));

/** "Not twenty six twenty three", of twenty six: the sum on record, denied, and right behind it the one that it was. */
const behindDenied = (
  { value, kind, from }: Scan["numbers"][number],
  words: readonly string[],
  kept: number | null,
): number | undefined => {
  const [said, denied] = [String(value), String(kept ?? "")];
  const isDenied = kind === "run" && denied !== "" && DENIES.has(words[from - 1] ?? "");
  return isDenied && said.startsWith(denied) && said.length === 2 * denied.length
    ? Number(said.slice(denied.length))
    : undefined;
};

/** The sums that a message names for a record: money, bare numbers, and what follows from the one on record. */
export const sums = ({ found, words, fields }: Said): Offer[] => {
  const offer = (at: Stretch, cost: number, sort: string): Offer => ({
    from: at.from,
    to: at.to,
    field: "cost",
    change: { change: "fields", to: { cost } },
    is: String(cost),
    sort,
  });
  const money = found.amounts.filter(({ what }) => what === "money");
  const taken: readonly Stretch[] = [...found.amounts, ...found.times, ...found.components];
  const bare = found.numbers.filter(
    (number) =>
      (number.kind === "cardinal" || number.kind === "run") &&
      !isYear(number) &&
      !taken.some((each) => overlaps(each, number)) &&
      number.value > 0 &&
      !isNumberOf(number, found.tokens) &&
      !(number.to - number.from === 1 && words[number.from] === "one"),
  );
  const whole = <T extends Stretch>(all: readonly T[]): readonly T[] =>
    fields.cost === null ? all : all.filter((each) => wayOf(each, found) === undefined);
  return [
    ...whole(money).map((amount) => offer(amount, amount.value, "money")),
    ...whole(bare).map((number) =>
      offer(number, behindDenied(number, words, fields.cost) ?? number.value, "bare"),
    ),
    ...bare
      .filter((number) => asCents(number, fields.cost))
      .map((number) => offer(number, number.value / 100, "cents")),
    ...workedOut(found, [...money, ...bare], fields.cost).map(
      (each): Offer => ({ ...offer(each, each.cost, each.how), reckoned: true }),
    ),
  ];
};
