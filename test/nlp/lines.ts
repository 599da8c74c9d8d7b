import { readFileSync } from "node:fs";

/** The lines of a table in plain text beside a test, without blank lines and remarks. */
export const linesOf = (file: URL): readonly string[] =>
  readFileSync(file, "utf8")
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "" && !line.startsWith("#"));
