/** Lines with their numbers; a single one stands alone. */
export const withNumbers = (lines: readonly string[]): readonly string[] =>
  lines.length === 1 ? lines : lines.map((line, index) => `${index + 1}. ${line}`);

export const numbered = (lines: readonly string[]): string => withNumbers(lines).join("\n");
