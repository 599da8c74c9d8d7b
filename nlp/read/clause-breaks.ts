import type { Token } from "../lexicon/tokens.ts";
import {
  bareSubject,
  opensBare,
  opensHearsay,
  opensMonth,
  startsByName,
  startsBySubject,
} from "./clause-openers.ts";
import type { Scan } from "./scan.ts";
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

const END = new Set([".", "!", "?", ";"]);
const SOFT = listed("clausesSoft");

export const endsSentence = (token: Token | undefined): boolean =>
  token?.kind === "mark" && END.has(token.norm);
/** A new line begins at a word, and the line before does not end on a word that leads on: "greased the". */
export const beginsLine = ({ tokens, text }: Scan, at: number): boolean => {
  const [before, token] = [tokens[at - 1], tokens[at]];
  if (before === undefined || token === undefined) return false;
  const leadsOn =
    DETERMINERS.has(before.norm) || PREPOSITIONS.has(before.norm) || AUXILIARIES.has(before.norm);
  return !leadsOn && text.slice(before.end, token.start).includes("\n");
};
const isMark = (token: Token | undefined): boolean => token?.kind === "mark" && SOFT.has(token.norm);

/** A hyphen between letters is no break. */
const isDash = (tokens: readonly Token[], at: number): boolean => {
  const token = tokens[at];
  if (!isMark(token)) return false;
  if (token?.norm !== "-" && token?.norm !== "–") return true;
  const [before, after] = [tokens[at - 1], tokens[at + 1]];
  return before?.end !== token.start || after?.start !== token.end;
};

const JOINED_BY = listed("clausesJoinedBy");

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
  if (JOINED_BY.has(next) || bareSubject(tokens, at + 1, names)) return true;
  const adverb = verbs.has(at + 2) && !DETERMINERS.has(next);
  return adverb || (DETERMINERS.has(next) && [2, 3, 4].some((ahead) => names.has(at + ahead)));
};

const NOT_BEFORE_WELL = listed("clausesNotBeforeWell");
const NOT_BEFORE_THEN = listed("clausesNotBeforeThen");
const AFTER_NOW = listed("clausesAfterNow");
const GO_ON = listed("clausesGoOn");

/** Whether a clause begins at a word; `verbs` and `starts` are where acts and names begin, `used` where anything known ends. */
export const breaksAt = (
  scan: Scan,
  at: number,
  verbs: ReadonlySet<number>,
  starts: ReadonlySet<number>,
  used: ReadonlySet<number>,
): boolean => {
  const { tokens } = scan;
  const word = tokens[at]?.norm ?? "";
  const before = tokens[at - 1]?.norm ?? "";
  const after = tokens[at + 1]?.norm ?? "";
  if (endsSentence(tokens[at - 1]) || beginsLine(scan, at) || isDash(tokens, at - 1)) return true;
  if (opensBare(scan, at, verbs) || opensMonth(tokens, at) || opensHearsay(tokens, at)) return true;
  if (word === "and" || word === "or") return joinsClauses(tokens, at, verbs, starts);
  if (word === "so" && (NOT_BREAK_SO.has(after) || before === "or")) return false;
  if (word === "well" && NOT_BEFORE_WELL.has(before)) return false;
  if (word === "then" && NOT_BEFORE_THEN.has(before)) return false;
  if (word === "now" && AFTER_NOW.has(after)) return true;
  if (BREAKERS.has(word)) return !(before === "and" || before === "but" || before === "so");
  if (SUBORDINATORS.has(word)) return at > 0 && !BREAKERS.has(before) && before !== "and";
  if (GO_ON.has(before)) return false;
  return startsBySubject(tokens, at) || startsByName(tokens, at, starts, verbs, used);
};
