import type { Outcome } from "../../shared/vocabulary.ts";
import { VERDICT_INDEX, type VerdictEntry } from "../lexicon/lexicon.ts";
import { accepts, compile, type Hit, type Pattern } from "../lexicon/pattern.ts";
import type { Token } from "../lexicon/tokens.ts";
import type { Stretch } from "./stretch.ts";
import { listed, NEGATIVES } from "./words.ts";

export type Verdict = Hit<VerdictEntry>;
type Said = Hit<{ readonly outcome: Outcome | null }>;

/** A verdict told by a rule and not by a phrase of the lexicon. */
export const verdictBy = ({ from, to }: Stretch, outcome: Outcome, source: string): Verdict => ({
  from,
  to,
  value: { outcome },
  source,
  verb: null,
});

const OPENS_DENIAL: ReadonlySet<string> = new Set([...NEGATIVES, "half", "nowhere"]);
/** Denials of the verb after them. */
const DENIES = listed("verdictsDenies");
/** Words that may stand between a denial and what it denies. */
const BETWEEN = listed("verdictsBetween");
const COMPARED = listed("verdictsCompared");
const NO = new Set(["no", "not", "any", "none"]);

/** How many words a pattern names, not counting gaps: of two that are as long the one that says more counts. */
const saidBy = (source: string): number => source.split(" ").filter((part) => !part.startsWith("..")).length;

/** A verdict within a wider one ("as bad as" in "not as bad as it was"), or on what a denial before it denies ("won't hold | pressure"). */
const isWithin = (hit: Said, wider: Said | undefined, tokens: readonly Token[]): boolean =>
  wider !== undefined &&
  hit.from < wider.to &&
  (hit.to <= wider.to || OPENS_DENIAL.has(tokens[wider.from]?.norm ?? ""));

const patterns = new Map<string, Pattern<null>>();
const patternOf = (source: string): Pattern<null> => {
  const known = patterns.get(source) ?? compile(source, null);
  patterns.set(source, known);
  return known;
};

/** "Still not working": a denial in the gap of a phrase. */
const deniedInside = ({ from, to, source }: Said, tokens: readonly Token[]): boolean =>
  source.includes("..") &&
  tokens
    .slice(from + 1, to)
    .some((token) => DENIES.has(token.norm) && !patternOf(source).parts.some((part) => accepts(part, token)));

/** "Isn't fixed", "has not really come back": a denial right before a phrase that holds none itself. */
const deniedBefore = ({ from }: Said, tokens: readonly Token[]): boolean => {
  if (OPENS_DENIAL.has(tokens[from]?.norm ?? "") || tokens[from]?.norm.startsWith("noth") === true)
    return false;
  let at = from - 1;
  while (from - at < 3 && BETWEEN.has(tokens[at]?.norm ?? "")) at--;
  return DENIES.has(tokens[at]?.norm ?? "");
};

const ENDED = listed("verdictsEnded");

/** "Quit blowing cold", "gave up heating": what was good is no more. */
const ended = ({ from }: Said, tokens: readonly Token[]): boolean => {
  const before = tokens[from - 1]?.norm === "up" ? from - 2 : from - 1;
  return /in[g']?$/.test(tokens[from]?.norm ?? "") && ENDED.has(tokens[before]?.norm ?? "");
};

const FLIPPED: Readonly<Partial<Record<Outcome, Outcome>>> = { holding: "failed", failed: "holding" };

/** What a phrase says with the denials around it. */
const meant = (hit: Said, tokens: readonly Token[]): Said => {
  const { outcome } = hit.value;
  if (outcome === null) return hit;
  const first = tokens[hit.from]?.norm ?? "";
  if (outcome === "partly" && COMPARED.has(first) && NO.has(tokens[hit.from - 1]?.norm ?? ""))
    return { ...hit, from: hit.from - 1, value: { outcome: "failed" }, source: `not:${hit.source}` };
  const flipped = FLIPPED[outcome];
  const denied =
    (outcome === "holding" && (deniedInside(hit, tokens) || ended(hit, tokens))) || deniedBefore(hit, tokens);
  return flipped !== undefined && denied
    ? { ...hit, value: { outcome: flipped }, source: `not:${hit.source}` }
    : hit;
};

/** "Isn't holding", "quit blowing cold": whether good is denied. */
export const deniesGood = ({ value, source }: Verdict): boolean =>
  value.outcome === "failed" && (source.startsWith("not:") || source.startsWith("%not "));

/** "No longer leaks": whether trouble of before is denied. */
export const deniesTrouble = ({ value, source }: Verdict): boolean =>
  value.outcome === "holding" && source.startsWith("no longer ");

/** The verdicts of a text, of those that start together the widest; words that only look like one are left out. */
export const verdictsIn = (tokens: readonly Token[]): Verdict[] => {
  const found: Said[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const hits: readonly Said[] = VERDICT_INDEX.at(tokens, at);
    if (hits.length === 0) continue;
    const best = hits.reduce((a, b) =>
      b.to > a.to || (b.to === a.to && saidBy(b.source) > saidBy(a.source)) ? b : a,
    );
    if (!isWithin(best, found.at(-1), tokens)) found.push(best);
  }
  return found
    .map((hit) => meant(hit, tokens))
    .flatMap((hit) =>
      hit.value.outcome === null ? [] : [{ ...hit, value: { outcome: hit.value.outcome } }],
    );
};
