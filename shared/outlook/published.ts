import type { ComponentId } from "../vocabulary.ts";
import type { Day } from "./days.ts";
import type { Use } from "./use.ts";

/** The latest day for a look that a published interval allows; infinite when none is known. */
export const publishedLimit = (_component: ComponentId, _base: Day, _use: Use): Day =>
  Number.POSITIVE_INFINITY;
