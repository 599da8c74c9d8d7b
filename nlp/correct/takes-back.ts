import data from "./removal-words.json" with { type: "json" };

const TAKES_BACK: ReadonlySet<string> = new Set(data.takesBack);
const KINDLY: ReadonlySet<string> = new Set(data.kindly);

/** "Scrub the butyl", "please strike that it holds": whether a word opens a message and takes back what was told. */
export const takesBackAt = (words: readonly string[], at: number): boolean =>
  TAKES_BACK.has(words[at] ?? "") && words.slice(0, at).every((word) => KINDLY.has(word));
