import type { VerdictEntry } from "../lexicon/lexicon.ts";
import type { Hit } from "../lexicon/pattern.ts";
import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import fragments from "./fragments.json" with { type: "json" };
import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";
import { listed, NEGATIVES } from "./words.ts";

type Verdict = Hit<VerdictEntry>;

const STATES: ReadonlySet<string> = new Set(fragments.good);
const FILLERS: ReadonlySet<string> = new Set(fragments.fillers);
const BAD: ReadonlySet<string> = new Set(fragments.bad);
const MOST_WORDS = 5;

const verdict = (stretch: Stretch, outcome: "holding" | "failed", source: string): Verdict => ({
  ...stretch,
  value: { outcome },
  source,
  verb: null,
});

/** A clause that is only a state: "Cold in six hours", "quiet". */
const stateAlone = (scan: Scan, clause: Clause): Verdict | undefined => {
  const words = scan.tokens.slice(clause.from, clause.to).filter((token) => token.kind === "word");
  const first = words.find((token) => !FILLERS.has(token.norm));
  if (first === undefined || words.length > MOST_WORDS || words.some((token) => NEGATIVES.has(token.norm)))
    return undefined;
  if (STATES.has(first.norm)) return verdict(clause, "holding", "state-alone");
  return BAD.has(first.norm) && words.length <= 2 ? verdict(clause, "failed", "state-alone") : undefined;
};

const PRONOUNS = listed("fragmentsPronouns");

/** "And now it closes": told as the way it is since. */
const nowIt = (scan: Scan, clause: Clause): Verdict | undefined => {
  let at = clause.from;
  while (at < clause.to && ["and", "so", "but"].includes(wordAt(scan, at))) at++;
  if (wordAt(scan, at) !== "now" || !PRONOUNS.has(wordAt(scan, at + 1))) return undefined;
  const words = scan.tokens.slice(at + 2, clause.to).map((token) => token.norm);
  return words.length === 0 || words.some((word) => NEGATIVES.has(word) || word === "only" || word === "just")
    ? undefined
    : verdict(clause, "holding", "now-it");
};

/** Verdicts told by the shape of a clause where no phrase of the lexicon fits. */
export const fragmentVerdicts = (scan: Scan, clauses: readonly Clause[], deeds: readonly Deed[]): Verdict[] =>
  clauses.flatMap((clause) => {
    const inside = (ref: Stretch) => ref.from >= clause.from && ref.from < clause.to;
    if (
      startingIn(scan.verdicts, clause.from, clause.to).length > 0 ||
      startingIn(scan.faults, clause.from, clause.to).length > 0 ||
      touching(deeds, clause.from, clause.to).some((deed) => inside(deed) && deed.status !== "talk")
    )
      return [];
    return stateAlone(scan, clause) ?? nowIt(scan, clause) ?? [];
  });
