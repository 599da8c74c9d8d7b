import type { ComponentRef } from "../lexicon/components.ts";
import { DROP } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import { wordAt } from "./ground.ts";
import type { Scan } from "./scan.ts";
import { touching } from "./windows.ts";
import { DETERMINERS, listed } from "./words.ts";

const WANTS = listed("nominalPlansWants");

const phraseFrom = (scan: Scan, at: number): number => {
  let from = [":", "-"].includes(wordAt(scan, at)) ? at + 1 : at;
  while (
    from - at < 6 &&
    (DETERMINERS.has(wordAt(scan, from)) ||
      DROP.has(wordAt(scan, from)) ||
      scan.tokens[from]?.kind === "number" ||
      wordAt(scan, from) === "of")
  )
    from++;
  return from;
};

const wanted = (from: number, to: number, clause: number, source: string): Deed => ({
  from,
  to,
  at: from,
  clause,
  sense: "new",
  action: "replace",
  status: "plan",
  source,
});

const LISTING = listed("nominalPlansListing");

/** The rest of a shopping list: "fuses, a water filter, and a new sewer cap". */
const alsoListed = (scan: Scan, after: number): readonly ComponentRef[] => {
  const found: ComponentRef[] = [];
  for (let at = after; at < scan.tokens.length && at - (found.at(-1)?.to ?? after) < 6; at++) {
    const ref = touching(scan.components, at, at).find((each) => each.from === at);
    if (ref !== undefined) {
      found.push(ref);
      at = ref.to - 1;
    } else if (!LISTING.has(wordAt(scan, at)) && scan.tokens[at]?.kind !== "number") break;
  }
  return found;
};

/** Wants that name a thing and no verb: "i need four tires before the season", "that wants a cartridge". */
export const nominalPlans = (
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
  deeds: readonly Deed[],
): Deed[] =>
  scan.cues.flatMap((cue): Deed[] => {
    if (cue.value !== "plan" || !WANTS.has(cue.source)) return [];
    const clause = index[cue.from] ?? 0;
    const to = clauses[clause]?.to ?? cue.to;
    if (
      touching(deeds, cue.from, to).some(
        (deed) => deed.clause === clause && deed.status === "plan" && deed.at >= cue.from,
      )
    )
      return [];
    if (["to", "it", "that", "and"].includes(wordAt(scan, cue.to))) return [];
    const from = phraseFrom(scan, cue.to);
    const thing = [...touching(scan.components, from, from), ...touching(scan.materials, from, from)].find(
      (ref) => ref.from <= from && from < ref.to && ref.to <= to,
    );
    if (thing === undefined) return [];
    const first = wanted(cue.from, thing.to, clause, cue.source);
    return [
      first,
      ...alsoListed(scan, thing.to).map((ref) =>
        wanted(ref.from, ref.to, index[ref.from] ?? clause, cue.source),
      ),
    ];
  });
