import { z } from "zod";
import { ACTIONS, COMPONENTS } from "../vocabulary.ts";
import { happeningSchema } from "./happening.ts";
import table from "./tables/care.json" with { type: "json" };

export const SEASONS = ["spring", "summer", "autumn", "winter"] as const;
export type Season = (typeof SEASONS)[number];

const components = z.array(z.enum(COMPONENTS)).min(1);
const actions = z.array(z.enum(ACTIONS)).min(1);
const count = z.number().positive();

const rowSchema = z.object({
  id: z.string(),
  /** What is to be done, as it follows "time to". */
  say: z.string(),
  look: z.string(),
  components,
  /** Told work of one of these kinds on one of the components counts as done. */
  resets: actions,
  consequence: z.enum(["safety", "water", "use", "comfort"]),
  every: z.object({ days: count, miles: count, cycles: count, fills: count, trips: count }).partial(),
  seasons: z.array(z.enum(SEASONS)).optional(),
  beforeTrip: z.boolean().optional(),
  /** Again after so many miles or days from such work. */
  afterWork: z
    .object({
      components,
      actions,
      miles: z.array(count).optional(),
      days: z.number().nonnegative().optional(),
      why: z.string(),
    })
    .optional(),
  /** So many days after something happened. */
  afterEvents: z
    .array(z.object({ event: happeningSchema, days: z.number().nonnegative() }))
    .min(1)
    .optional(),
  /** Only from this age of the component on. */
  fromNewDays: count.optional(),
  /** The interval also bounds looks at fixes of the components. */
  limitsLooks: z.boolean().optional(),
  also: z.string().optional(),
  source: z.string(),
  sourceStatus: z.enum(["read", "partly read", "from memory", "no source"]),
  sourceKeys: z.array(z.string()),
});

/** One recurring piece of care, with the published source of its interval or the word that there is none. */
export type CareRow = z.infer<typeof rowSchema>;

const parsed = z
  .object({ about: z.string(), sources: z.record(z.string(), z.string()), rows: z.array(rowSchema).min(1) })
  .parse(table);

export const CARE_ROWS: readonly CareRow[] = parsed.rows;
export const CARE_SOURCES: Readonly<Record<string, string>> = parsed.sources;
