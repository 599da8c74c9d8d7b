import { isPlainVerb } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import data from "./shapes.json" with { type: "json" };
import type { Verdict } from "./verdicts.ts";
import { listed } from "./words.ts";

const SUPPOSED = new Set(data.supposed);
const LOOK_BACK = 5;
const BECAUSE = new Set(["because", "cause", "cos"]);
const SEEMS = listed("shapesSeems");
const ASKS = listed("shapesAsks");

/** "If it starts again, ...": only supposed, unless it is what we shall see. */
const isCondition = (scan: Scan, clause: Clause): boolean =>
  wordAt(scan, clause.from) === "if" && !ASKS.has(wordAt(scan, clause.from - 1));

/** "To keep the rain out": what it is for, not how it went. */
const isPurpose = (scan: Scan, { from }: Stretch): boolean =>
  wordAt(scan, from - 1) === "to" && !SEEMS.has(wordAt(scan, from - 2)) && isPlainVerb(wordAt(scan, from));

/** "Hope it holds", "should hold", "if it leaks again": nothing has been seen yet. */
export const withoutHopes = (
  scan: Scan,
  verdicts: readonly Verdict[],
  clauses: readonly Clause[],
  index: Int32Array,
): Verdict[] =>
  verdicts.flatMap((each) => {
    const clause = clauses[index[each.from] ?? 0];
    const opener = wordAt(scan, clause?.from ?? 0);
    if (clause !== undefined && each.value.outcome !== "untested")
      if (isCondition(scan, clause) || BECAUSE.has(opener) || isPurpose(scan, each)) return [];
    const from = Math.max(clause?.from ?? 0, each.from - LOOK_BACK);
    const hoped = scan.tokens.slice(from, each.from).some((token) => SUPPOSED.has(token.norm));
    if (!hoped || each.value.outcome === "untested") return [each];
    return each.value.outcome === "holding"
      ? [{ ...each, value: { outcome: "untested" as const }, source: `hoped:${each.source}` }]
      : [];
  });
