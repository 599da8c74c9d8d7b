import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { lessonsOfAll } from "./crossed.ts";
import { lessonsOf, together } from "./examples.ts";
import { FIELD_JUDGES, type FieldJudge, learn, learnFields } from "./learn.ts";
import { KEPT_OUT, knownNotes } from "./notes.ts";
import { type LearntTables, writeLearnt } from "./written.ts";

const fileAt = (name: string): string =>
  fileURLToPath(new URL(`../../../../nlp/read/${name}`, import.meta.url));
const [JUDGES, FIELDS] = ["judges.json", "field-judges.json"].map(fileAt) as [string, string];

const isField = (name: string): name is FieldJudge => (FIELD_JUDGES as readonly string[]).includes(name);

const notes = knownNotes().filter((note) => !KEPT_OUT.has(note.set));
const asked = process.argv.slice(2);

/** Learns the judges from all notes that are not kept out, and writes their weights: of what is told where, and of the fields. */
const learnAll = (): void => {
  const lessons = lessonsOfAll(notes);
  process.stderr.write(
    `${String(notes.length)} notes, ${String(lessons.kind.length)} places, ${String(lessons.aim.length)} choices\n`,
  );
  const { tells, kind, plainly, aim, described, called, kept, ...fields } = learn(lessons);
  writeLearnt(JUDGES, { tells, kind, plainly, described, called, aim, kept });
  writeLearnt(FIELDS, fields);
};

/** Learns some judges of fields, which look at no other judge, and leaves the rest as they are. */
const learnSome = (names: readonly FieldJudge[]): void => {
  const nothing = { tells: [], kind: [], aim: [], described: [] };
  const lessons = together(notes.map((note) => ({ ...lessonsOf(note), ...nothing })));
  const known = JSON.parse(readFileSync(FIELDS, "utf8")) as LearntTables;
  writeLearnt(FIELDS, { ...known, ...learnFields(lessons, names) });
};

const unknown = asked.filter((name) => !isField(name));
if (unknown.length > 0) {
  process.stderr.write(`No judge of a field: ${unknown.join(", ")}. There are ${FIELD_JUDGES.join(", ")}.\n`);
  process.exitCode = 2;
} else if (asked.length > 0) learnSome(asked.filter(isField));
else learnAll();
