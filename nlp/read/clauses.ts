import { beginsLine, breaksAt, endsSentence } from "./clause-breaks.ts";
import type { ActRef, Scan, Stretch } from "./scan.ts";
import { listed, SUBORDINATORS } from "./words.ts";

/** A piece of the note that says one thing. `hard`: it starts after the end of a sentence or an announced switch. */
export type Clause = Stretch & { readonly hard: boolean; readonly subordinate: boolean };

const HARD_STARTS = listed("clausesHardStarts");
const BEFORE_HARD = listed("clausesBeforeHard");

const isHard = (scan: Scan, at: number): boolean => {
  const { tokens } = scan;
  const before = tokens[at - 1];
  if (before === undefined || endsSentence(before) || beginsLine(scan, at)) return true;
  const words = tokens.slice(at, at + 3).map((token) => token.norm);
  return words.some(
    (word, index) => HARD_STARTS.has(word) && (index === 0 || BEFORE_HARD.has(words[0] ?? "")),
  );
};

const verbsOf = (acts: readonly ActRef[]): Set<number> =>
  new Set(acts.flatMap((act) => (act.verb === null ? [] : [act.verb.at])));

const FRAME_WORDS = listed("clausesFrameWords");

const MOST_FRAME = 12;

/** Nothing but a time and joining words: "then on the twentieth of august". */
const isFrame = (scan: Scan, from: number, to: number, timed: ReadonlySet<number>): boolean => {
  if (to - from > MOST_FRAME || endsSentence(scan.tokens[to - 1])) return false;
  let times = 0;
  for (let at = from; at < to; at++) {
    const token = scan.tokens[at];
    if (timed.has(at)) times++;
    else if (token?.kind !== "mark" && !FRAME_WORDS.has(token?.norm ?? "")) return false;
  }
  return times > 0;
};

/** No clause that people say is longer, in words; what goes on is cut here, so that looking through a clause stays cheap. */
const LONGEST = 60;

/** Cuts a note into clauses; works with and without punctuation. */
export const clausesOf = (scan: Scan): Clause[] => {
  const verbs = verbsOf(scan.acts);
  const starts = new Set(scan.components.map((ref) => ref.from));
  const used = new Set(
    [
      ...scan.faults,
      ...scan.verdicts,
      ...scan.times,
      ...scan.amounts,
      ...scan.materials,
      ...scan.components,
    ].map((ref) => ref.to - 1),
  );
  const timed = new Set(
    scan.times.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, at) => from + at)),
  );
  /** "the summer before last" is one phrase. */
  const inTime = new Set(
    scan.times.flatMap(({ from, to }) => Array.from({ length: to - from - 1 }, (_, at) => from + at + 1)),
  );
  /** What follows "no sorry" goes on with what it corrects. */
  const corrects = new Set(
    scan.cues.filter((cue) => cue.value === "correct" && cue.to - cue.from > 1).map((cue) => cue.to),
  );
  const clauses: Clause[] = [];
  let from = 0;
  for (let at = 1; at <= scan.tokens.length; at++) {
    if (
      at < scan.tokens.length &&
      at - from < LONGEST &&
      (corrects.has(at) ||
        inTime.has(at) ||
        !breaksAt(scan, at, verbs, starts, used) ||
        isFrame(scan, from, at, timed))
    )
      continue;
    const first = scan.tokens[from]?.norm ?? "";
    clauses.push({ from, to: at, hard: isHard(scan, from), subordinate: SUBORDINATORS.has(first) });
    from = at;
  }
  return clauses;
};

/** Index of the clause of each token. */
export const clauseIndex = (clauses: readonly Clause[]): Int32Array => {
  const index = new Int32Array(clauses.at(-1)?.to ?? 0);
  for (const [at, clause] of clauses.entries()) index.fill(at, clause.from, clause.to);
  return index;
};
