/** Lines with their numbers; a single one stands alone. */
export const numbered = (lines: readonly string[]): string =>
  lines.length === 1 ? (lines[0] ?? "") : lines.map((line, index) => `${index + 1}. ${line}`).join("\n");
