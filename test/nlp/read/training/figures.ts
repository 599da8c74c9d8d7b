import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { lessonsOf, together } from "./examples.ts";
import { learn } from "./learn.ts";
import { KEPT_OUT, knownNotes } from "./notes.ts";

const A_LINE = 40;
const inLines = (signs: readonly string[]): string =>
  Array.from({ length: Math.ceil(signs.length / A_LINE) }, (_, at) =>
    signs.slice(at * A_LINE, (at + 1) * A_LINE).join(","),
  ).join(",\n");

const FILE = fileURLToPath(new URL("../../../../nlp/read/judges.json", import.meta.url));

/** Learns the judges from all notes that are not kept out, and writes their weights. */
const notes = knownNotes().filter((note) => !KEPT_OUT.has(note.set));
const lessons = together(notes.map(lessonsOf));
process.stderr.write(
  `${String(notes.length)} notes, ${String(lessons.kind.length)} places, ${String(lessons.aim.length)} choices\n`,
);
const learnt = learn(lessons);
const lines = Object.entries(learnt).map(([name, table]) => {
  const signs = Object.entries(table.signs).map(
    ([sign, pairs]) => `${JSON.stringify(sign)}:${JSON.stringify(pairs)}`,
  );
  return `${JSON.stringify(name)}:{"of":${JSON.stringify(table.of)},"bias":${JSON.stringify(table.bias)},"signs":{\n${inLines(signs)}\n}}`;
});
writeFileSync(FILE, `{\n${lines.join(",\n")}\n}\n`);
