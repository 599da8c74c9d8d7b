import { fileURLToPath } from "node:url";
import { lessonsOfAll } from "./crossed.ts";
import { lessonsOf } from "./examples.ts";
import { learn } from "./learn.ts";
import { KEPT_OUT, knownNotes, TALKATIVE } from "./notes.ts";
import { writeLearnt } from "./written.ts";

const fileAt = (name: string): string =>
  fileURLToPath(new URL(`../../../../nlp/read/${name}`, import.meta.url));

/** Learns the judges from all notes that are not kept out, and writes their weights: of what is told where, and of the fields. */
const notes = knownNotes().filter((note) => !KEPT_OUT.has(note.set));
const lessons = lessonsOfAll(notes.filter((note) => !TALKATIVE.has(note.set)));
const talkative = notes.filter((note) => TALKATIVE.has(note.set)).flatMap((note) => lessonsOf(note).tells);
process.stderr.write(
  `${String(notes.length)} notes, ${String(lessons.kind.length)} places, ${String(lessons.aim.length)} choices\n`,
);
const { tells, kind, aim, described, kept, ...fields } = learn({
  ...lessons,
  tells: [...lessons.tells, ...talkative],
});
writeLearnt(fileAt("judges.json"), { tells, kind, described, aim, kept });
writeLearnt(fileAt("field-judges.json"), fields);
