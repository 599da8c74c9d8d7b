import { judgesBy } from "../../../../nlp/read/judges.ts";
import { type Lessons, lessonsOf, together } from "./examples.ts";
import { keptLessonsOf } from "./kept.ts";
import { EMPTY_TABLES, learnDescribed, learnPlaces } from "./learn.ts";
import { nameLessons } from "./names.ts";
import type { KnownNote } from "./notes.ts";

/** As many parts as the notes are cut into. */
const PARTS = 5;

/**
 * What notes teach. What words speak of, what is told where and of which thing are signs to other judges, who must not think
 * more of them than of what is said in notes never seen: they are learnt for each part of the notes from the others.
 */
export const lessonsOfAll = (notes: readonly KnownNote[]): Lessons => {
  const part = (at: number): number => at % PARTS;
  const butFor = (lessons: readonly Lessons[], nth: number): Lessons =>
    together(lessons.filter((_, at) => part(at) !== nth));
  const parts = Array.from({ length: PARTS }, (_, nth) => nth);
  const first = notes.map((note) => lessonsOf(note));
  const names = nameLessons();
  const described = parts.map((nth) => learnDescribed(butFor(first, nth), names));
  const describing = described.map((tables) => judgesBy({ ...EMPTY_TABLES, ...tables }).described);
  const second = notes.map((note, at) => lessonsOf(note, describing[part(at)]));
  const kept = parts.flatMap((nth) => {
    const judges = judgesBy({ ...EMPTY_TABLES, ...learnPlaces(butFor(second, nth)), ...described[nth] });
    return notes.filter((_, at) => part(at) === nth).flatMap((note) => keptLessonsOf(note, judges));
  });
  return { ...together(second), kept };
};
