import { DROP, isPlainVerb, KEEP } from "../lexicon/lexicon.ts";
import type { Token } from "../lexicon/tokens.ts";
import type { Scan } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";
import { AUXILIARIES, DETERMINERS, listed, PREPOSITIONS, SUBJECTS, SUBORDINATORS } from "./words.ts";

const NO_SUBJECT = listed("clausesNoSubject");
const NOT_BEFORE_SUBJECT = listed("clausesNotBeforeSubject");

/** "The drain is clear i did the trap too": a pronoun with nothing that governs it. */
export const startsBySubject = (tokens: readonly Token[], at: number): boolean => {
  const [word, before, after] = [
    tokens[at]?.norm ?? "",
    tokens[at - 1]?.norm ?? "",
    tokens[at + 1]?.norm ?? "",
  ];
  if (!SUBJECTS.has(word) || NO_SUBJECT.has(word)) return false;
  if (word === "it" && !AUXILIARIES.has(after)) return false;
  return !PREPOSITIONS.has(before) && !SUBORDINATORS.has(before) && !NOT_BEFORE_SUBJECT.has(before);
};

const ARTICLES = new Set(["the", "my", "our"]);
const NOT_BEFORE_NAME = listed("clausesNotBeforeName");

/** Ends of verbs ("swap out the switch"), or of what was said before ("with the bikes up the light flickered"). */
const PARTICLES = new Set(["up", "down", "out"]);

/** A new subject with nothing that governs it: "it holds fine the roof vent lid blew off". */
export const startsByName = (
  tokens: readonly Token[],
  at: number,
  starts: ReadonlySet<number>,
  verbs: ReadonlySet<number>,
  used: ReadonlySet<number>,
): boolean => {
  if (!ARTICLES.has(tokens[at]?.norm ?? "")) return false;
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

const BARE_VERBS = listed("clausesBareVerbs");

/** "and slide topper has a rip": a name without an article and a verb of its own. */
export const bareSubject = (tokens: readonly Token[], at: number, starts: ReadonlySet<number>): boolean =>
  starts.has(at) && [1, 2, 3, 4].some((ahead) => BARE_VERBS.has(tokens[at + ahead]?.norm ?? ""));

const OTHERS = listed("clausesOthers");
const SAYING = listed("clausesSaying");
const NOT_BEFORE_OTHERS = listed("clausesNotBeforeOthers");

/** "it's holding so far people keep telling me". */
export const opensHearsay = (tokens: readonly Token[], at: number): boolean =>
  OTHERS.has(tokens[at]?.norm ?? "") &&
  SAYING.has(tokens[at + 1]?.norm ?? "") &&
  !NOT_BEFORE_OTHERS.has(tokens[at - 1]?.norm ?? "");

const PREDICATES = listed("clausesPredicates");
const SPEAKERS = listed("clausesSpeakers");
const NOT_BEFORE_BARE = listed("clausesNotBeforeBare");

/** "test in the morning city water inlet was letting ...": a name without an article, then its verb or speaker. */
export const opensBare = (scan: Scan, at: number, verbs: ReadonlySet<number>): boolean => {
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
    !NOT_BEFORE_BARE.has(before.norm) &&
    !touching(scan.components, at, at).some((each) => each.to === at)
  );
};

const MONTHS = listed("clausesMonths");
const NOT_BEFORE_MONTH = listed("clausesNotBeforeMonth");
const AFTER_MONTH = listed("clausesAfterMonth");

/** "sixty times april the stabilizer": a bare month opens the next part of a year's tale. */
export const opensMonth = (tokens: readonly Token[], at: number): boolean => {
  const before = tokens[at - 1]?.norm ?? "";
  return (
    MONTHS.has(tokens[at]?.norm ?? "") &&
    !PREPOSITIONS.has(before) &&
    !NOT_BEFORE_MONTH.has(before) &&
    AFTER_MONTH.has(tokens[at + 1]?.norm ?? "")
  );
};
