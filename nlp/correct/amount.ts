import type { Change } from "../../shared/memory/correction.ts";
import type { Scan } from "../read/scan.ts";
import { isNumberOf } from "./numbered.ts";
import { shiftIn } from "./shift.ts";

const MONEY_WORDS =
  /\b(?:cost|costs|paid|price|all in|total|altogether|came to|bill|charged|set me back|spent)\b/;

const isLoose = (found: Scan, number: { readonly from: number; readonly to: number }): boolean =>
  ![...found.times, ...found.amounts, ...found.components].some(
    (ref) => ref.from < number.to && number.from < ref.to,
  );

const looseNumber = (found: Scan): number | null =>
  found.numbers.find(
    (number) => (number.kind === "cardinal" || number.kind === "run") && isLoose(found, number),
  )?.value ??
  found.amounts[0]?.value ??
  null;

/** Numbers that are neither part of a date nor the "one" of "the rear one". */
const bareNumber = (found: Scan) =>
  found.numbers.find(
    (number) =>
      (number.kind === "cardinal" || number.kind === "run") &&
      isLoose(found, number) &&
      !isNumberOf(number, found.tokens) &&
      (number.to - number.from > 1 || found.tokens[number.from]?.norm !== "one") &&
      ENDING.has(found.tokens[number.to]?.norm ?? ""),
  );

/** What may follow a number that is told without its unit. */
const ENDING: ReadonlySet<string> = new Set([
  "",
  "not",
  "instead",
  "all",
  "total",
  "altogether",
  "in",
  "for",
  "with",
  "actually",
  "plus",
  "by",
  "on",
  "and",
]);

/** "Kilometers, not miles": only the unit was wrong. */
const UNIT = /^(?:it was |that was |in |its )*(kilomet(?:er|re)s?|kms?|miles)$/;

const TIME_UNITS: ReadonlySet<string> = new Set(["days", "weeks", "months", "years", "seasons"]);
/** The number that a stretch gives for another: money, use, the unit alone, or one that only the record can place. */
export const amountChange = (body: string, found: Scan, wrong: Scan): readonly Change[] => {
  const shifts = shiftIn(body) !== undefined;
  const amounts = found.amounts
    .filter(({ what }) => !shifts || !TIME_UNITS.has(what))
    .filter((amount) => !found.times.some((time) => time.from < amount.to && amount.from < time.to));
  const money = amounts.find(({ what }) => what === "money");
  if (money !== undefined) return [{ change: "fields", to: { cost: money.value } }];
  const use = amounts.find(({ what }) => what !== "money");
  const instead = looseNumber(wrong);
  if (use !== undefined) {
    return [
      {
        change: "number",
        to: use.value,
        unit: use.what === "reading" || use.what === "money" ? null : use.what,
        instead,
      },
    ];
  }
  const unit = UNIT.exec(body)?.[1];
  if (unit !== undefined && found.numbers.length === 0) {
    return [{ change: "number", to: null, unit: unit.startsWith("k") ? "km" : "miles", instead: null }];
  }
  const bare = bareNumber(found);
  if (bare === undefined) return [];
  if (MONEY_WORDS.test(body)) return [{ change: "fields", to: { cost: bare.value } }];
  return [{ change: "number", to: bare.value, unit: null, instead }];
};
