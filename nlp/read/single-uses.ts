import type { UseUnit } from "../../shared/record.ts";
import type { Exposed } from "./exposures.ts";
import type { Scan, Stretch } from "./scan.ts";
import units from "./units.json" with { type: "json" };
import { listed } from "./words.ts";

const UNITS: ReadonlyMap<string, UseUnit> = new Map(
  Object.entries(units.single).flatMap(([unit, words]) =>
    words.map((word) => [word, unit as UseUnit] as const),
  ),
);
const LEADS = listed("exposureLeads");
const BETWEEN = listed("exposureBetween");
/** Said without any word before it. */
const ALONE = new Set(["overnight"]);

/** One night, storm or season, told without a number: "overnight", "the next day", "a whole winter". */
export const singleUses = ({ tokens }: Scan, { from, to }: Stretch): Exposed[] => {
  const found: Exposed[] = [];
  for (let at = from; at < Math.min(to, tokens.length); at++) {
    const unit = UNITS.get(tokens[at]?.norm ?? "");
    if (unit === undefined) continue;
    let start = at;
    while (BETWEEN.has(tokens[start - 1]?.norm ?? "")) start--;
    const led = LEADS.has(tokens[start - 1]?.norm ?? "");
    if (led || start < at || ALONE.has(tokens[at]?.norm ?? ""))
      found.push({ value: { count: 1, unit }, at: { from: led ? start - 1 : start, to: at + 1 } });
  }
  return found;
};
