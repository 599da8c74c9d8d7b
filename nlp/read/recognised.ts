import type { Moment } from "../../shared/reading.ts";
import { type Clause, clauseIndex, clausesOf } from "./clauses.ts";
import { corrected } from "./corrections.ts";
import { deedsOf } from "./deeds.ts";
import { fragmentVerdicts } from "./fragments.ts";
import { type Ground, placeTokensOf, tokensOf } from "./ground.ts";
import { withoutHopes } from "./hopes.ts";
import { mutedTokens } from "./muted.ts";
import { type Scan, type Stretch, scan } from "./scan.ts";
import { shapedVerdicts } from "./shapes.ts";
import { listed } from "./words.ts";

const TURNS = listed("indexTurns");

/** Words of two sentences that only look like one phrase: "never hold | well it's been two years". */
const crossesTurn = (
  ref: Stretch,
  { tokens }: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
): boolean => {
  const last = index[ref.to - 1] ?? 0;
  return index[ref.from] !== last && TURNS.has(tokens[clauses[last]?.from ?? 0]?.norm ?? "");
};

/** A note cut into clauses, with all that is recognised in it and how it is meant. */
export const recognised = (text: string, moment: Moment): Ground => {
  const first: Scan = scan(text, moment);
  const clauses = clausesOf(first);
  const index = clauseIndex(clauses);
  const deeds = deedsOf(first, clauses, index);
  const whole = first.verdicts.filter((verdict) => !crossesTurn(verdict, first, clauses, index));
  const verdicts = [
    ...withoutHopes(first, whole, clauses, index),
    ...fragmentVerdicts(first, clauses, deeds),
    ...shapedVerdicts(first, clauses, index, deeds),
  ].sort((a, b) => a.from - b.from);
  const seen: Scan = { ...first, verdicts };
  return {
    scan: seen,
    clauses,
    index,
    deeds,
    fixed: corrected(seen, deeds),
    muted: mutedTokens(seen, clauses),
    takenTokens: tokensOf(seen.amounts),
    placeTokens: placeTokensOf(seen),
  };
};
