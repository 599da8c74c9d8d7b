import { isPlainVerb } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import type { Scan } from "./scan.ts";
import data from "./shapes.json" with { type: "json" };
import { type Verdict, verdictBy } from "./verdicts.ts";
import { touching } from "./windows.ts";
import { DETERMINERS, listed } from "./words.ts";

const DENIALS = new Set(data.denials);
const UNSURE = new Set(data.unsure);
const SUPPOSED = new Set(data.supposed);
const SOFTENERS = new Set(data.softeners);
const FILLERS = new Set(data.fillers);
const PRONOUNS = new Set(data.pronouns);
const JOINED = new Set(data.joined);
const NOT_JOBS = new Set(data.notJobs);
const CAME = new Set(data.came);
const ABLE = new Set(data.able);
const USERS = new Set(data.usersOf);
/** Jobs of the things on a rig, as it does them: "seals", "flushes". */
const JOBS = new Set(data.jobs);
/** Jobs that are also names of things. */
const NOUNS_TOO = listed("jobsNounsToo");
/** Words that put an end to a state. */
const ENDS = listed("shapesEnds");
/** Words that alone only lead on to the next thing. */
const LEADS_ON = new Set(["okay", "ok", "right", "true"]);
const FIT = new Set(data.fit);
const COPULAS = new Set(data.copulas);
const OTHERS: ReadonlySet<string> = new Set([...listed("clausesOthers"), "dad", "he", "she", "who", "there"]);
const US = new Set(["i", "we", "im", "ive", "weve", "you"]);
/** Most words of a clause that is a state and nothing else. */
const ALONE = 4;
/** Most words before the verb of a clause that tells of a job. */
const EARLY = 4;
/** Most words of such a clause. */
const SHORT = 11;

const isJob = (word: string): boolean => isPlainVerb(word) && !NOT_JOBS.has(word);

/** "It clicks", "she's charging", "they've kept", "it lit": the thing is told to do its job. */
const doesItsJob = (words: readonly string[]): boolean => {
  const [head = "", first = "", second = ""] = words;
  if (JOINED.has(head)) return /(?:ing|ed|wn|pt)$/.test(first) && isJob(first);
  if (USERS.has(head)) return ABLE.has(first) && isPlainVerb(second) && !UNSURE.has(second);
  if (!PRONOUNS.has(head)) return false;
  if (first === "has" || first === "have") return isJob(second) || second === "been";
  return CAME.has(first) || (first.endsWith("s") && isJob(first));
};

/** "Runs cool", "the drawer slides easy now": a state of a thing in order, tied to it or alone. */
const isFit = (words: readonly string[]): boolean =>
  words.some(
    (word, at) =>
      FIT.has(word) &&
      (words.slice(Math.max(0, at - 2), at).some((before) => COPULAS.has(before)) ||
        (at === 0 && words.length <= ALONE && !(words.length === 1 && LEADS_ON.has(word))) ||
        (words[at + 1] === "now" && at + 2 === words.length)),
  );

/** "Seals all the way round", "the brakes bite nice and even": a thing at its job, and not its name ("the seals"). */
const isAtWork = (words: readonly string[], isName: (at: number) => boolean): boolean =>
  words.length <= SHORT &&
  !OTHERS.has(words[0] ?? "") &&
  words
    .slice(0, EARLY)
    .some(
      (word, at) =>
        JOBS.has(word) &&
        !DETERMINERS.has(words[at - 1] ?? "") &&
        !isCounted(words[at - 1]) &&
        !(NOUNS_TOO.has(word) && at > 0 && !PRONOUNS.has(words[at - 1] ?? "")) &&
        !(words[at + 1] ?? "").endsWith("ing") &&
        !isName(at),
    );

const isCounted = (word: string | undefined): boolean =>
  word !== undefined &&
  /^(?:new|two|three|four|old|other|side|rear|front|tail|marker|left|right)$/.test(word);

/** Told of the thing right after the work, with nothing against it. */
export const saidOfIt = (scan: Scan, clause: Clause): Verdict | undefined => {
  const all = scan.tokens.slice(clause.from, clause.to).map((token) => token.norm);
  const against = (word: string): boolean =>
    DENIALS.has(word) || SOFTENERS.has(word) || SUPPOSED.has(word) || ENDS.has(word);
  if (all.some(against)) return undefined;
  const start = all.findIndex((word) => !FILLERS.has(word));
  const words = start < 0 ? [] : all.slice(start);
  const isName = (at: number): boolean => {
    const token = clause.from + Math.max(0, start) + at;
    return [...touching(scan.components, token, token), ...touching(scan.materials, token, token)].some(
      (ref) => ref.from <= token && token < ref.to && ref.to - ref.from > 1,
    );
  };
  return doesItsJob(words) || (!US.has(words[0] ?? "") && (isFit(words) || isAtWork(words, isName)))
    ? verdictBy(clause, "holding", "said-of-it")
    : undefined;
};
