import { DROP, isPlainVerb, KEEP } from "../lexicon/lexicon.ts";
import type { Token } from "../lexicon/tokens.ts";
import type { ActRef, Scan, Stretch } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";
import {
  AUXILIARIES,
  BREAKERS,
  DETERMINERS,
  listed,
  NOT_BREAK_SO,
  PREPOSITIONS,
  SUBJECTS,
  SUBORDINATORS,
} from "./words.ts";

/** A piece of the note that says one thing. `hard`: it starts after the end of a sentence or an announced switch. */
export type Clause = Stretch & { readonly hard: boolean; readonly subordinate: boolean };

const END = new Set([".", "!", "?", ";", "\n"]);
const SOFT = listed("clausesSoft");

const endsSentence = (token: Token | undefined): boolean => token?.kind === "mark" && END.has(token.norm);
const isMark = (token: Token | undefined): boolean => token?.kind === "mark" && SOFT.has(token.norm);

/** A hyphen between letters is no break. */
const isDash = (tokens: readonly Token[], at: number): boolean => {
  const token = tokens[at];
  if (!isMark(token)) return false;
  if (token?.norm !== "-" && token?.norm !== "–") return true;
  const [before, after] = [tokens[at - 1], tokens[at + 1]];
  return before?.end !== token.start || after?.start !== token.end;
};

const joinsClauses = (
  tokens: readonly Token[],
  at: number,
  verbs: ReadonlySet<number>,
  names: ReadonlySet<number>,
): boolean => {
  const next = tokens[at + 1]?.norm ?? "";
  if (
    SUBJECTS.has(next) ||
    BREAKERS.has(next) ||
    SUBORDINATORS.has(next) ||
    AUXILIARIES.has(next) ||
    verbs.has(at + 1)
  )
    return true;
  if (["still", "not", "now", "no", "finally", "just", "today", "yesterday", "same", "that"].includes(next))
    return true;
  if (bareSubject(tokens, at + 1, names)) return true;
  const adverb = verbs.has(at + 2) && !DETERMINERS.has(next);
  return adverb || (DETERMINERS.has(next) && [2, 3, 4].some((ahead) => names.has(at + ahead)));
};

const startsBySubject = (tokens: readonly Token[], at: number): boolean => {
  const [word, before, after] = [
    tokens[at]?.norm ?? "",
    tokens[at - 1]?.norm ?? "",
    tokens[at + 1]?.norm ?? "",
  ];
  if (!SUBJECTS.has(word) || ["this", "you", "were", "there"].includes(word)) return false;
  if (word === "it" && !AUXILIARIES.has(after)) return false;
  return (
    !PREPOSITIONS.has(before) &&
    !SUBORDINATORS.has(before) &&
    ![
      "that",
      "what",
      "and",
      "how",
      "which",
      "who",
      "where",
      "think",
      "guess",
      "believe",
      "reckon",
      "say",
      "says",
      "said",
      "know",
      "one",
      "thing",
      "so",
      "but",
      "because",
      "then",
      "put",
      "thought",
    ].includes(before)
  );
};

const NOT_BEFORE_NAME = listed("clausesNotBeforeName");

/** Ends of verbs ("swap out the switch"), or of what was said before ("with the bikes up the light flickered"). */
const PARTICLES = new Set(["up", "down", "out"]);

/** A new subject with nothing that governs it: "it holds fine the roof vent lid blew off". */
const startsByName = (
  tokens: readonly Token[],
  at: number,
  starts: ReadonlySet<number>,
  verbs: ReadonlySet<number>,
  used: ReadonlySet<number>,
): boolean => {
  const word = tokens[at]?.norm ?? "";
  if (!["the", "my", "our"].includes(word)) return false;
  const before = tokens[at - 1];
  if (before === undefined || before.kind === "mark" || ![1, 2, 3].some((ahead) => starts.has(at + ahead)))
    return false;
  if (PARTICLES.has(before.norm) && [2, 3, 4].some((back) => verbs.has(at - back))) return false;
  if (used.has(at - 1) && !verbs.has(at - 1)) return !PREPOSITIONS.has(before.norm);
  if (
    PREPOSITIONS.has(before.norm) ||
    DETERMINERS.has(before.norm) ||
    AUXILIARIES.has(before.norm) ||
    verbs.has(at - 1)
  )
    return false;
  if (NOT_BEFORE_NAME.has(before.norm) || SUBJECTS.has(before.norm) || /(?:ed|ing|ly)$/.test(before.norm))
    return false;
  return !isPlainVerb(before.norm) && !isPlainVerb(before.stem);
};

/** "and slide topper has a rip": a name without an article and a verb of its own. */
const bareSubject = (tokens: readonly Token[], at: number, starts: ReadonlySet<number>): boolean => {
  if (!starts.has(at)) return false;
  return [1, 2, 3, 4].some((ahead) =>
    ["is", "was", "has", "had", "needs", "wants", "are", "were", "wont", "wouldnt"].includes(
      tokens[at + ahead]?.norm ?? "",
    ),
  );
};

const OTHERS = listed("clausesOthers");
const SAYING = listed("clausesSaying");
/** "it's holding so far people keep telling me". */
const opensHearsay = (tokens: readonly Token[], at: number): boolean =>
  OTHERS.has(tokens[at]?.norm ?? "") &&
  SAYING.has(tokens[at + 1]?.norm ?? "") &&
  !["and", "the", "my", "other", "some", "but", "that", "which"].includes(tokens[at - 1]?.norm ?? "");

const PREDICATES = listed("clausesPredicates");
const SPEAKERS = listed("clausesSpeakers");
/** "test in the morning city water inlet was letting ...": a name without an article, then its verb or speaker. */
const opensBare = (scan: Scan, at: number, verbs: ReadonlySet<number>): boolean => {
  const ref = startingIn(scan.components, at, at + 1).find((each) => !each.weak);
  const before = scan.tokens[at - 1];
  if (ref === undefined || before?.kind !== "word") return false;
  const after = scan.tokens[ref.to]?.norm ?? "";
  if (!PREDICATES.has(after) && !SPEAKERS.has(after)) return false;
  const tied =
    PREPOSITIONS.has(before.norm) ||
    DETERMINERS.has(before.norm) ||
    AUXILIARIES.has(before.norm) ||
    verbs.has(at - 1) ||
    DROP.has(before.norm) ||
    KEEP.has(before.norm);
  return (
    !tied &&
    ![
      "and",
      "or",
      "but",
      "so",
      "then",
      "um",
      "uh",
      "oh",
      "okay",
      "that",
      "which",
      "when",
      "side",
      "front",
      "rear",
      "back",
      "left",
      "right",
      "not",
      "just",
    ].includes(before.norm) &&
    !touching(scan.components, at, at).some((each) => each.to === at)
  );
};

const MONTHS = listed("clausesMonths");
/** "sixty times april the stabilizer": a bare month opens the next part of a year's tale. */
const opensMonth = (tokens: readonly Token[], at: number): boolean =>
  MONTHS.has(tokens[at]?.norm ?? "") &&
  !PREPOSITIONS.has(tokens[at - 1]?.norm ?? "") &&
  !["last", "this", "next", "late", "early", "mid", "past", "every", "june", "or", "and", "well"].includes(
    tokens[at - 1]?.norm ?? "",
  ) &&
  ["the", "i", "we", "um", "nothing", "my", "well"].includes(tokens[at + 1]?.norm ?? "");

const breaksAt = (
  scan: Scan,
  at: number,
  verbs: ReadonlySet<number>,
  starts: ReadonlySet<number>,
  used: ReadonlySet<number>,
): boolean => {
  const { tokens } = scan;
  const word = tokens[at]?.norm ?? "";
  const before = tokens[at - 1];
  if (endsSentence(before) || isDash(tokens, at - 1)) return true;
  if (opensBare(scan, at, verbs) || opensMonth(tokens, at) || opensHearsay(tokens, at)) return true;
  if (word === "and" || word === "or") return joinsClauses(tokens, at, verbs, starts);
  if (word === "so" && (NOT_BREAK_SO.has(tokens[at + 1]?.norm ?? "") || before?.norm === "or")) return false;
  if (
    word === "well" &&
    ["as", "pretty", "very", "works", "working", "it", "holding", "worked"].includes(before?.norm ?? "")
  )
    return false;
  if (word === "then" && ["and", "but", "since", "by", "till", "until"].includes(before?.norm ?? ""))
    return false;
  if (word === "now" && ["the", "my", "our", "then"].includes(tokens[at + 1]?.norm ?? "")) return true;
  if (BREAKERS.has(word)) return !(before?.norm === "and" || before?.norm === "but" || before?.norm === "so");
  if (SUBORDINATORS.has(word)) return at > 0 && !BREAKERS.has(before?.norm ?? "") && before?.norm !== "and";
  if (["and", "but", "so", "then"].includes(before?.norm ?? "")) return false;
  return startsBySubject(tokens, at) || startsByName(tokens, at, starts, verbs, used);
};

const HARD_STARTS = listed("clausesHardStarts");

const isHard = (tokens: readonly Token[], at: number): boolean => {
  const before = tokens[at - 1];
  if (before === undefined || endsSentence(before)) return true;
  const words = tokens.slice(at, at + 3).map((token) => token.norm);
  return words.some(
    (word, index) =>
      HARD_STARTS.has(word) &&
      (index === 0 || ["and", "so", "but", "oh", "um", "uh", "okay"].includes(words[0] ?? "")),
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
    clauses.push({ from, to: at, hard: isHard(scan.tokens, from), subordinate: SUBORDINATORS.has(first) });
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
