import type { ComponentId } from "../vocabulary.ts";
import { CARE_ROWS, type CareRow } from "./care-table.ts";
import type { Day } from "./days.ts";
import { everyWords } from "./say.ts";
import type { Use } from "./use.ts";
import { dayOfUse } from "./use-day.ts";

/** The latest day for a look that a published interval allows, and the interval in words ("every 6 months"). */
export type PublishedLimit = { readonly day: Day; readonly rule: string };

const limiting = new Map<ComponentId, CareRow[]>();
for (const row of CARE_ROWS.filter(({ limitsLooks }) => limitsLooks === true))
  for (const component of row.components) limiting.set(component, [...(limiting.get(component) ?? []), row]);

const limitsOf = ({ every }: CareRow, base: Day, use: Use): PublishedLimit[] => {
  const limits: PublishedLimit[] = [];
  if (every.days !== undefined) limits.push({ day: base + every.days, rule: everyWords(every.days) });
  if (every.miles !== undefined)
    limits.push({
      day: dayOfUse(use, "miles", base, every.miles),
      rule: `every ${every.miles.toLocaleString("en-US")} miles`,
    });
  return limits;
};

/** The strictest published interval for a component, counted from the last look; undefined when none is known. */
export const publishedLimit = (component: ComponentId, base: Day, use: Use): PublishedLimit | undefined =>
  (limiting.get(component) ?? [])
    .flatMap((row) => limitsOf(row, base, use))
    .reduce<PublishedLimit | undefined>(
      (first, one) => (first === undefined || one.day < first.day ? one : first),
      undefined,
    );
