import type { ComponentId } from "../vocabulary.ts";
import { CARE_ROWS, type CareRow } from "./care-table.ts";
import type { Day } from "./days.ts";
import { everyWords, figures } from "./say.ts";
import type { Use } from "./use.ts";
import { dayOfUse } from "./use-day.ts";

/** The latest day for a look that a published interval allows, and the interval in words ("every 6 months"). */
export type PublishedLimit = { readonly day: Day; readonly rule: string };

type Limit = { readonly rule: string; readonly dayFrom: (base: Day, use: Use) => Day };

const limitsOf = ({ every: { days, miles } }: CareRow): Limit[] => [
  ...(days === undefined ? [] : [{ rule: everyWords(days), dayFrom: (base: Day) => base + days }]),
  ...(miles === undefined
    ? []
    : [
        {
          rule: `every ${figures(miles)} miles`,
          dayFrom: (base: Day, use: Use) => dayOfUse(use, "miles", base, miles),
        },
      ]),
];

const limiting = new Map<ComponentId, Limit[]>();
for (const row of CARE_ROWS.filter(({ limitsLooks }) => limitsLooks === true))
  for (const component of row.components)
    limiting.set(component, [...(limiting.get(component) ?? []), ...limitsOf(row)]);

/** The strictest published interval for a component, counted from the last look; undefined when none is known. */
export const publishedLimit = (component: ComponentId, base: Day, use: Use): PublishedLimit | undefined => {
  let first: PublishedLimit | undefined;
  for (const { rule, dayFrom } of limiting.get(component) ?? []) {
    const day = dayFrom(base, use);
    if (first === undefined || day < first.day) first = { day, rule };
  }
  return first;
};
