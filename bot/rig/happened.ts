import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import { type Happening, happeningSchema } from "../../shared/outlook/index.ts";
import type { Store } from "../../store/store.ts";

export const HAPPENED_KEY = "care.happened";

const keptSchema = z.partialRecord(happeningSchema, z.string()).default({});

/** The last day on which each of these happened, as ISO days. */
export const keptHappenings = (store: Store): Readonly<Partial<Record<Happening, string>>> =>
  keptSchema.parse(store.settings.get(HAPPENED_KEY));

export const happenedOn = (store: Store): ReadonlyMap<Happening, Temporal.PlainDate> =>
  new Map(
    (Object.entries(keptHappenings(store)) as [Happening, string][]).map(([what, day]) => [
      what,
      Temporal.PlainDate.from(day),
    ]),
  );
