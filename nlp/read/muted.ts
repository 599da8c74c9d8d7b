import type { Clause } from "./clauses.ts";
import type { Scan } from "./scan.ts";

const SENTENCE_END = new Set([".", "!", "?", ";", "\n"]);

const sentenceFrom = (scan: Scan, at: number): number => {
  let from = at;
  while (from > 0 && !SENTENCE_END.has(scan.tokens[from - 1]?.norm ?? "")) from--;
  return from;
};

const questionStart = (scan: Scan, clause: Clause, at: number): boolean =>
  scan.cues.some(
    (cue) =>
      cue.value === "question" &&
      cue.from >= clause.from &&
      cue.from <= clause.from + 2 &&
      cue.from < clause.to,
  ) && at >= clause.from;

/** Marks what is asked, or told of other people's rigs: it gives no record. */
export const mutedTokens = (scan: Scan, clauses: readonly Clause[]): Uint8Array => {
  const muted = new Uint8Array(scan.tokens.length);
  scan.tokens.forEach((token, at) => {
    if (token.norm === "?") muted.fill(1, sentenceFrom(scan, at), at + 1);
  });
  for (const clause of clauses)
    if (questionStart(scan, clause, clause.from)) muted.fill(1, clause.from, clause.to);
  for (const cue of scan.cues) {
    if (cue.value !== "outsider") continue;
    for (let at = cue.to; at < Math.min(cue.to + 12, scan.tokens.length); at++) {
      const word = scan.tokens[at]?.norm ?? "";
      if (SENTENCE_END.has(word) || ["i", "we", "my", "our", "me", "us"].includes(word)) break;
      if (["his", "her", "their", "hers", "theirs"].includes(word)) {
        muted.fill(1, at, Math.min(at + 8, scan.tokens.length));
        break;
      }
    }
  }
  return muted;
};
