import type { Cue } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import type { Scan } from "./scan.ts";
import { startingIn } from "./windows.ts";
import { listed, NEGATIVES, SUBJECTS } from "./words.ts";

const SENTENCE_END = new Set([".", "!", "?", ";", "\n"]);

const sentenceFrom = (scan: Scan, at: number): number => {
  let from = at;
  while (from > 0 && !SENTENCE_END.has(scan.tokens[from - 1]?.norm ?? "")) from--;
  return from;
};

const cueIn = (scan: Scan, clause: Clause, wanted: readonly Cue[]): boolean =>
  startingIn(scan.cues, clause.from, clause.to).some(
    (cue) =>
      wanted.includes(cue.value) &&
      cue.from >= clause.from &&
      cue.to <= clause.to &&
      !["like", "as"].includes(scan.tokens[cue.from - 1]?.norm ?? "") &&
      !["like", "as"].includes(scan.tokens[cue.from - 2]?.norm ?? ""),
  );

/** A question's cue stands at the head of its clause, or says that the answer is not known. */
const asks = (scan: Scan, clause: Clause): boolean =>
  startingIn(scan.cues, clause.from, clause.to).some(
    (cue) =>
      cue.value === "question" &&
      cue.from >= clause.from &&
      cue.from < clause.to &&
      (cue.from <= clause.from + 2 || UNKNOWN.has(cue.source)),
  );
const UNKNOWN = listed("mutedUnknown");

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

const INVERTED = listed("mutedInverted");
const ASKED = listed("mutedAsked");
const OPENERS = listed("mutedOpeners");

/** "Does the water heater need draining": a verb before its subject at the head of a sentence. */
const inverted = (scan: Scan, clause: Clause): boolean => {
  if (!clause.hard) return false;
  let at = clause.from;
  while (OPENERS.has(scan.tokens[at]?.norm ?? "")) at++;
  return (
    at < clause.to && INVERTED.has(scan.tokens[at]?.norm ?? "") && ASKED.has(scan.tokens[at + 1]?.norm ?? "")
  );
};

/** The clauses that go on with a dream or a memory. */
const tale = (clauses: readonly Clause[], at: number): readonly Clause[] => {
  const end = clauses.findIndex((clause, index) => index > at && clause.hard);
  return clauses.slice(at + 1, Math.min(end < 0 ? clauses.length : end, at + 4));
};

/** "If the roof ever goes". */
const supposed = (scan: Scan, clause: Clause): boolean =>
  ["if", "unless"].includes(scan.tokens[clause.from]?.norm ?? "");

/** "so I'm getting new ones": what was advised is taken up. */
const takenUp = (scan: Scan, clause: Clause): boolean => {
  const words = scan.tokens.slice(clause.from, clause.from + 3).map((token) => token.norm);
  return (
    ["so", "and", "then"].includes(words[0] ?? "") &&
    words.some((word) => ["i", "im", "ill", "we", "were"].includes(word)) &&
    cueIn(scan, clause, ["plan"]) &&
    !cueIn(scan, clause, ["refuse", "neg"])
  );
};

/** "not buying one till pay day" puts off and does not refuse. */
const postponed = (scan: Scan, clause: Clause): boolean =>
  scan.tokens
    .slice(clause.from, clause.to + 3)
    .some((token) => token.norm === "until" || token.norm === "till");

const OWN = listed("mutedOwn");
const ELSEWHERE = listed("mutedElsewhere");

const PASSED = listed("mutedPassed");
const RIGS = listed("mutedRigs");
const HEAD = 8;

/** "Drove past a rig on its side": where such a tale begins. */
const passedRig = (scan: Scan): number => {
  const words = scan.tokens.slice(0, HEAD).map((token) => token.norm);
  return words.findIndex(
    (word, at) =>
      PASSED.has(word) &&
      ["a", "an", "another"].includes(words[at + 1] ?? "") &&
      words.slice(at + 2, at + 4).some((each) => RIGS.has(each)),
  );
};

/** A tale of other people's rigs at the head of a note, up to the first clause that is about the speaker's own. */
const muteTale = (scan: Scan, clauses: readonly Clause[], muted: Uint8Array): void => {
  const cue = startingIn(scan.cues, 0, HEAD).find((each) => each.value === "outsider");
  const near = scan.tokens.slice(cue?.from, (cue?.to ?? 0) + 4).map((token) => token.norm);
  const isOther = cue !== undefined && near.some((word) => ELSEWHERE.has(word));
  const from = isOther ? cue.from : passedRig(scan);
  if (from < 0) return;
  for (const clause of clauses) {
    const words = scan.tokens.slice(clause.from, clause.from + 4).map((token) => token.norm);
    if (
      clause.from > from &&
      words.some((word) => OWN.has(word)) &&
      !words.includes("scared") &&
      !words.includes("told")
    )
      return;
    muted.fill(1, clause.from, clause.to);
  }
};

/** Marks what is asked, advised and not taken up, refused, or told of other people's rigs: it gives no record. */
export const mutedTokens = (scan: Scan, clauses: readonly Clause[]): Uint8Array => {
  const muted = new Uint8Array(scan.tokens.length);
  for (const [at, token] of scan.tokens.entries())
    if (token.norm === "?") muted.fill(1, sentenceFrom(scan, at), at + 1);
  for (const [at, clause] of clauses.entries()) {
    const asked = asks(scan, clause) || inverted(scan, clause);
    const refused = cueIn(scan, clause, ["refuse"]) && !postponed(scan, clause);
    const taken = [clauses[at + 1], clauses[at + 2]].some(
      (each) => each !== undefined && takenUp(scan, each),
    );
    if (asked || refused || (!taken && cueIn(scan, clause, ["advice", "asked", "unreal"])))
      muted.fill(1, clause.from, clause.to);
    const next = clauses[at + 1];
    const advice = startingIn(scan.cues, clause.from, clause.to).find(
      (cue) =>
        cue.value === "advice" &&
        cue.from >= clause.from &&
        cue.to <= clause.to &&
        !["like", "as"].includes(scan.tokens[cue.from - 2]?.norm ?? ""),
    );
    if (advice !== undefined && next !== undefined && clause.to - advice.to <= 2 && !next.hard)
      muted.fill(1, next.from, next.to);
    if (
      advice !== undefined &&
      next !== undefined &&
      ["and", "or"].includes(scan.tokens[next.from]?.norm ?? "") &&
      !SUBJECTS.has(scan.tokens[next.from + 1]?.norm ?? "") &&
      !NEGATIVES.has(scan.tokens[next.from + 1]?.norm ?? "")
    )
      muted.fill(1, next.from, next.to);
    if (cueIn(scan, clause, ["unreal"]))
      for (const each of tale(clauses, at)) muted.fill(1, each.from, each.to);
    if (
      supposed(scan, clause) &&
      next?.hard === false &&
      ["im", "ill", "id", "well", "were", "i", "we"].includes(scan.tokens[next.from]?.norm ?? "")
    )
      muted.fill(1, next.from, next.to);
    if (
      asked &&
      next?.hard === false &&
      clause.to - clause.from <= 7 &&
      ["i", "we"].includes(scan.tokens[next.from]?.norm ?? "")
    )
      muted.fill(1, next.from, next.to);
    if (asked && next?.subordinate === true && !next.hard) muted.fill(1, next.from, next.to);
  }
  muteOthers(scan, muted);
  muteTale(scan, clauses, muted);
  return muted;
};
