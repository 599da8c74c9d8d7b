import type { ComponentId } from "../vocabulary.ts";
import { CARE_ROWS, type CareRow } from "./care-table.ts";
import type { Day } from "./days.ts";
import type { Use } from "./use.ts";
import { dayOfUse } from "./use-day.ts";

const limiting = new Map<ComponentId, CareRow[]>();
for (const row of CARE_ROWS.filter(({ limitsLooks }) => limitsLooks === true))
  for (const component of row.components) limiting.set(component, [...(limiting.get(component) ?? []), row]);

/** The latest day for a look that a published interval allows; infinite when none is known. */
export const publishedLimit = (component: ComponentId, base: Day, use: Use): Day =>
  (limiting.get(component) ?? []).reduce((latest, { every }) => {
    const byTime = every.days === undefined ? Number.POSITIVE_INFINITY : base + every.days;
    const byMiles =
      every.miles === undefined ? Number.POSITIVE_INFINITY : dayOfUse(use, "miles", base, every.miles);
    return Math.min(latest, byTime, byMiles);
  }, Number.POSITIVE_INFINITY);
