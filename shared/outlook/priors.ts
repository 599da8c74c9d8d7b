import { z } from "zod";
import type { RecordFields } from "../record.ts";
import { ACTIONS, COMPONENTS } from "../vocabulary.ts";
import table from "./tables/priors.json" with { type: "json" };

const words = z.array(z.string().min(2)).min(1);
const kindSchema = z.object({
  id: z.string(),
  say: z.string(),
  actions: z.array(z.enum(ACTIONS)).min(1),
  words: words.optional(),
  butNot: words.optional(),
  components: z.array(z.enum(COMPONENTS)).optional(),
  medianDays: z.number().positive(),
  spread: z.number().positive(),
  risk: z.enum(["early", "steady", "wear"]),
  dud: z.number().min(0).max(0.5),
  dudDays: z.number().positive(),
  why: z.string(),
});

/** One kind of fix and what is expected of it before the rig has shown anything. */
export type FixKind = z.infer<typeof kindSchema>;

export const FIX_KINDS: readonly FixKind[] = z
  .object({ about: z.string(), kinds: z.array(kindSchema).min(1) })
  .parse(table).kinds;

/** Work that cures nothing by itself: it belongs to standing care unless it answered a fault. */
const SERVICE = new Set(["clean", "lubricate", "flush", "charge", "reset"]);

const said = (materials: readonly string[], list: readonly string[] | undefined) =>
  list !== undefined &&
  materials.some((material) => list.some((word) => ` ${material} `.includes(` ${word}`)));

const byAction = new Map(
  ACTIONS.map((action) => [action, FIX_KINDS.filter(({ actions }) => actions.includes(action))]),
);

const matches = (kind: FixKind, { component, materials }: RecordFields): boolean =>
  (kind.components === undefined || kind.components.includes(component)) &&
  (kind.words === undefined || said(materials, kind.words)) &&
  !said(materials, kind.butNot);

/** The kind of fix that a piece of work is; undefined for work that needs no look of its own (a test, a routine greasing). */
export const fixKindOf = (fields: RecordFields): FixKind | undefined => {
  if (fields.kind !== "repair" || fields.action === null) return undefined;
  if (SERVICE.has(fields.action) && fields.fault === null) return undefined;
  return byAction.get(fields.action)?.find((kind) => matches(kind, fields));
};
