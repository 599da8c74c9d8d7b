import { z } from "zod";
import type { RecordFields } from "../record.ts";
import { COMPONENTS } from "../vocabulary.ts";
import type { FixKind } from "./priors.ts";
import table from "./tables/signs.json" with { type: "json" };

const sign = z.string().min(10);
const signsSchema = z.object({
  about: z.string(),
  kinds: z.record(z.string(), sign),
  components: z.partialRecord(z.enum(COMPONENTS), sign),
});

const signs = signsSchema.parse(table);

const GENERAL = "Look for movement, fresh cracks, rust or damp, and whether it does its job.";

/** What to look for on this component, and on this kind of fix: one or two short sentences. */
export const lookForOf = ({ component }: RecordFields, kind: FixKind): string => {
  const found = [signs.components[component], signs.kinds[kind.id]].filter((text) => text !== undefined);
  return found.length === 0 ? GENERAL : found.join(" ");
};
