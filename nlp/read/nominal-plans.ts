import { DROP } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import { wordAt } from "./ground.ts";
import { alsoListed, listedUnder } from "./listed-wants.ts";
import type { Scan, Stretch } from "./scan.ts";
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

/** Wants that name a thing and no verb: "i need four tires before the season", "that wants a cartridge". */
export const nominalPlans = (
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
  deeds: readonly Deed[],
): Deed[] => {
  const itemWanted = (item: Stretch, source: string): Deed => ({
    ...wanted(item.from, item.to, index[item.from] ?? 0, source),
    item: true,
  });
  const told = scan.cues.flatMap((cue): Deed[] => {
    if (cue.value !== "plan" || !WANTS.has(cue.source)) return [];
    if (["to", "it", "that", "and"].includes(wordAt(scan, cue.to))) return [];
    const clause = index[cue.from] ?? 0;
    const to = clauses[clause]?.to ?? cue.to;
    const from = phraseFrom(scan, cue.to);
    const thing = [...touching(scan.components, from, from), ...touching(scan.materials, from, from)].find(
      (ref) => ref.from <= from && from < ref.to && ref.to <= to,
    );
    if (thing === undefined) return [];
    const isTold = touching(deeds, cue.from, to).some(
      (deed) => deed.clause === clause && deed.status === "plan" && deed.at >= cue.from,
    );
    const others = alsoListed(scan, thing.to, deeds).map((item) => itemWanted(item, cue.source));
    if (isTold) return others;
    const [next] = others;
    const first = wanted(cue.from, next?.from ?? thing.to, clause, cue.source);
    return [next === undefined ? first : { ...first, item: true }, ...others];
  });
  const under = listedUnder(scan, deeds).map((item) => itemWanted(item, "shopping list"));
  return [...new Map([...told, ...under].map((deed) => [deed.at, deed])).values()];
};
