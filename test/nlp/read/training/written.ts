import { writeFileSync } from "node:fs";
import type { Learnt } from "../../../../nlp/read/linear.ts";

const A_LINE = 40;

const inLines = (signs: readonly string[]): string =>
  Array.from({ length: Math.ceil(signs.length / A_LINE) }, (_, at) =>
    signs.slice(at * A_LINE, (at + 1) * A_LINE).join(","),
  ).join(",\n");

/** Writes the weights of some judges as JSON, in lines short enough to compare. */
export const writeLearnt = (file: string, learnt: Readonly<Record<string, Learnt>>): void => {
  const lines = Object.entries(learnt).map(([name, table]) => {
    const signs = Object.entries(table.signs).map(
      ([sign, pairs]) => `${JSON.stringify(sign)}:${JSON.stringify(pairs)}`,
    );
    return `${JSON.stringify(name)}:{"of":${JSON.stringify(table.of)},"bias":${JSON.stringify(table.bias)},"signs":{\n${inLines(signs)}\n}}`;
  });
  writeFileSync(file, `{\n${lines.join(",\n")}\n}\n`);
};
