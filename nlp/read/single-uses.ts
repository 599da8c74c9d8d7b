import type { UseUnit } from "../../shared/record.ts";
import { type Exposed, isFill } from "./exposures.ts";
import type { Scan, Stretch } from "./scan.ts";
import units from "./units.json" with { type: "json" };
import { listed } from "./words.ts";

const unitsOf = (table: Readonly<Record<string, readonly string[]>>): [string, UseUnit][] =>
  Object.entries(table).flatMap(([unit, words]) =>
    words.map((word): [string, UseUnit] => [word, unit as UseUnit]),
  );

const UNITS: ReadonlyMap<string, UseUnit> = new Map(unitsOf(units.single));
const LEADS = listed("exposureLeads");
const BETWEEN = listed("exposureBetween");
/** Said without any word before it. */
const ALONE = new Set(["overnight"]);
/** "Monsoon came through". */
const COMES = listed("exposureComes");

const CALENDAR: ReadonlySet<UseUnit> = new Set(["days", "weeks", "months", "years"]);
/** What an ordinal counts: "the third day" is a date. */
const COUNTED: ReadonlyMap<string, UseUnit> = new Map([
  ...[...UNITS].filter(([, unit]) => !CALENDAR.has(unit)),
  ...unitsOf(units.counted),
]);

/** "Third trip now", "on her fifth winter", "the twelfth of those storms": as many as an ordinal says. */
export const countedUses = ({ tokens, numbers }: Scan, { from, to }: Stretch): Exposed[] =>
  numbers.flatMap((number) => {
    if (number.kind !== "ordinal" || number.from < from || number.from >= to) return [];
    const word = (at: number): string => tokens[at]?.norm ?? "";
    const at = word(number.to) === "of" ? number.to + 2 : number.to;
    const said = word(at);
    const unit = COUNTED.get(said) ?? COUNTED.get(said.replace(/s$/u, ""));
    return unit === undefined
      ? []
      : [{ value: { count: number.value, unit }, at: { from: number.from, to: at + 1 } }];
  });

const TWICE: ReadonlyMap<string, number> = new Map(Object.entries(units.twice));
/** "Filled it up twice since". */
export const timesFilled = (scan: Scan, { from, to }: Stretch): Exposed[] =>
  scan.tokens.slice(from, to).flatMap(({ norm }, nth) => {
    const value = TWICE.get(norm);
    const at = { from: from + nth, to: from + nth + 1 };
    if (value === undefined) return [];
    const unit = isFill({ ...at, value, what: "cycles" }, scan) ? ("fills" as const) : ("cycles" as const);
    return [{ value: { count: value, unit }, at }];
  });

/** One night, storm or season, told without a number: "overnight", "the next day", "a whole winter". */
export const singleUses = ({ tokens }: Scan, { from, to }: Stretch): Exposed[] => {
  const found: Exposed[] = [];
  for (let at = from; at < Math.min(to, tokens.length); at++) {
    const unit = UNITS.get(tokens[at]?.norm ?? "");
    if (unit === undefined) continue;
    let start = at;
    while (BETWEEN.has(tokens[start - 1]?.norm ?? "")) start--;
    const led = LEADS.has(tokens[start - 1]?.norm ?? "");
    const comes = unit === "storms" && COMES.has(tokens[at + 1]?.norm ?? "");
    if (led || start < at || comes || ALONE.has(tokens[at]?.norm ?? ""))
      found.push({ value: { count: 1, unit }, at: { from: led ? start - 1 : start, to: at + 1 } });
  }
  return found;
};
