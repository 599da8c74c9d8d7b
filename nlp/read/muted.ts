import type { Cue } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import type { Scan } from "./scan.ts";

const SENTENCE_END = new Set([".", "!", "?", ";", "\n"]);

const sentenceFrom = (scan: Scan, at: number): number => {
  let from = at;
  while (from > 0 && !SENTENCE_END.has(scan.tokens[from - 1]?.norm ?? "")) from--;
  return from;
};

const OWN = new Set(["i", "we", "ive", "weve", "im", "ill", "my", "our"]);

const cueIn = (scan: Scan, clause: Clause, wanted: readonly Cue[]): boolean =>
  scan.cues.some(
    (cue) =>
      wanted.includes(cue.value) &&
      cue.from >= clause.from &&
      cue.to <= clause.to &&
      !["like", "as"].includes(scan.tokens[cue.from - 1]?.norm ?? "") &&
      !["like", "as"].includes(scan.tokens[cue.from - 2]?.norm ?? ""),
  );

/** A question's cue stands at the head of its clause, or says that the answer is not known. */
const asks = (scan: Scan, clause: Clause): boolean =>
  scan.cues.some(
    (cue) =>
      cue.value === "question" &&
      cue.from >= clause.from &&
      cue.from < clause.to &&
      (cue.from <= clause.from + 2 || UNKNOWN.has(cue.source)),
  );
const UNKNOWN = new Set([
  "cant remember",
  "cannot remember",
  "dont remember",
  "couldnt tell you",
  "could not tell you",
  "if you ask",
  "no idea when",
  "do you",
  "did i",
  "did we",
]);

const muteOthers = (scan: Scan, muted: Uint8Array): void => {
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
};

const INVERTED = new Set([
  "does",
  "do",
  "is",
  "are",
  "should",
  "can",
  "could",
  "would",
  "will",
  "has",
  "am",
  "was",
]);
const ASKED = new Set([
  "the",
  "my",
  "our",
  "it",
  "we",
  "i",
  "you",
  "anyone",
  "anybody",
  "somebody",
  "that",
  "this",
  "there",
  "a",
  "any",
  "your",
]);
const OPENERS = new Set([
  "so",
  "okay",
  "ok",
  "um",
  "uh",
  "hey",
  "and",
  "but",
  "well",
  "oh",
  "hi",
  "just",
  "quick",
  "question",
]);

/** "Does the water heater need draining": a verb before its subject at the head of a sentence. */
const inverted = (scan: Scan, clause: Clause): boolean => {
  if (!clause.hard) return false;
  let at = clause.from;
  while (OPENERS.has(scan.tokens[at]?.norm ?? "")) at++;
  return (
    at < clause.to && INVERTED.has(scan.tokens[at]?.norm ?? "") && ASKED.has(scan.tokens[at + 1]?.norm ?? "")
  );
};

/** Marks what is asked, advised and not taken up, refused, or told of other people's rigs: it gives no record. */
export const mutedTokens = (scan: Scan, clauses: readonly Clause[]): Uint8Array => {
  const muted = new Uint8Array(scan.tokens.length);
  for (const [at, token] of scan.tokens.entries())
    if (token.norm === "?") muted.fill(1, sentenceFrom(scan, at), at + 1);
  for (const [at, clause] of clauses.entries()) {
    const asked = asks(scan, clause) || inverted(scan, clause);
    if (asked || cueIn(scan, clause, ["advice", "refuse", "asked"])) muted.fill(1, clause.from, clause.to);
    const next = clauses[at + 1];
    const advice = scan.cues.find(
      (cue) =>
        cue.value === "advice" &&
        cue.from >= clause.from &&
        cue.to <= clause.to &&
        !["like", "as"].includes(scan.tokens[cue.from - 2]?.norm ?? ""),
    );
    if (advice !== undefined && next !== undefined && clause.to - advice.to <= 2 && !next.hard)
      muted.fill(1, next.from, next.to);
    if (asked && next?.subordinate === true && !next.hard) muted.fill(1, next.from, next.to);
  }
  muteOthers(scan, muted);
  return muted;
};

void OWN;
