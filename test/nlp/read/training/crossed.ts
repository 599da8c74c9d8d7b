import { judgesBy } from "../../../../nlp/read/judges.ts";
import { type Lessons, lessonsOf, together } from "./examples.ts";
import { EMPTY_TABLES, learnDescribed } from "./learn.ts";
import type { KnownNote } from "./notes.ts";

/** As many parts as the notes are cut into. */
const PARTS = 5;

/**
 * What notes teach. What words speak of is learnt for each part of them from the others, as it is a sign to other judges,
 * who must not think more of it than of what is said in notes that they have never seen.
 */
export const lessonsOfAll = (notes: readonly KnownNote[]): Lessons => {
  const part = (at: number): number => at % PARTS;
  const first = notes.map((note) => lessonsOf(note));
  const tables = Array.from({ length: PARTS }, (_, nth) =>
    learnDescribed(together(first.filter((__, at) => part(at) !== nth))),
  );
  const judges = tables.map((described) => judgesBy({ ...EMPTY_TABLES, described }).described);
  return together(notes.map((note, at) => lessonsOf(note, judges[part(at)])));
};
