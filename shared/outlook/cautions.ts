import { z } from "zod";
import { ACTIONS, type Action, COMPONENTS, type ComponentId } from "../vocabulary.ts";
import table from "./tables/cautions.json" with { type: "json" };

const rowSchema = z
  .object({
    id: z.string(),
    components: z.array(z.enum(COMPONENTS)).optional(),
    actions: z.array(z.enum(ACTIONS)).optional(),
    words: z.array(z.string().min(3)).optional(),
    say: z.string().max(230),
    source: z.string(),
  })
  .refine(
    ({ components, words }) => components !== undefined || words !== undefined,
    "A row needs components or words.",
  );

type Row = z.infer<typeof rowSchema>;

/** Worst harm first. */
export const CAUTIONS: readonly Row[] = z
  .object({ about: z.string(), rows: z.array(rowSchema) })
  .parse(table).rows;

/** The work that was told; `text` is the stretch of the note that tells of it. */
export type Work = {
  readonly component: ComponentId;
  readonly action: Action | null;
  readonly materials: readonly string[];
  readonly text?: string;
};

/** Looking harms nobody. */
const HARMLESS = new Set<Action | null>(["inspect", "test"]);

const spaced = (text: string): string => ` ${text.toLowerCase().replace(/[^a-z0-9]+/g, " ")} `;

const fits = ({ components, actions, words }: Row, { component, action }: Work, said: string): boolean =>
  (components === undefined || components.includes(component)) &&
  (actions === undefined || (action !== null && actions.includes(action))) &&
  (words === undefined || words.some((word) => said.includes(` ${word} `)));

/** At most one short caution for a piece of work; null when none is called for. */
export const cautionFor = (work: Work): string | null => {
  const said = spaced([...work.materials, work.text ?? ""].join(" . "));
  const rows = HARMLESS.has(work.action) ? CAUTIONS.filter(({ words }) => words !== undefined) : CAUTIONS;
  return rows.find((row) => fits(row, work, said))?.say ?? null;
};
