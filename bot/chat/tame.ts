/** One line without control or invisible characters, trimmed, of at most `max` UTF-16 code units. */
export const tameLine = (text: string, max: number): string =>
  text
    .replace(/[\p{Cc}\p{Cf}]/gu, "")
    .trim()
    .slice(0, max)
    .replace(/[\uD800-\uDBFF]$/, "");
