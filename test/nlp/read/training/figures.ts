import { fileURLToPath } from "node:url";
import { lessonsOfAll } from "./crossed.ts";
import { learn } from "./learn.ts";
import { KEPT_OUT, knownNotes } from "./notes.ts";
import { writeLearnt } from "./written.ts";

const fileAt = (name: string): string =>
  fileURLToPath(new URL(`../../../../nlp/read/${name}`, import.meta.url));

/** Learns the judges from all notes that are not kept out, and writes their weights: of what is told where, and of the fields. */
const notes = knownNotes().filter((note) => !KEPT_OUT.has(note.set));
const lessons = lessonsOfAll(notes);
process.stderr.write(
  `${String(notes.length)} notes, ${String(lessons.kind.length)} places, ${String(lessons.aim.length)} choices\n`,
);
const { tells, kind, plainly, aim, described, called, kept, ...fields } = learn(lessons);
writeLearnt(fileAt("judges.json"), { tells, kind, plainly, described, called, aim, kept });
writeLearnt(fileAt("field-judges.json"), fields);
