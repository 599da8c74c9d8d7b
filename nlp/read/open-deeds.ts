import irregular from "../lexicon/data/irregular-verbs.json" with { type: "json" };
import { isPastForm } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import { tokensOf, wordAt } from "./ground.ts";
import notDeeds from "./not-deeds.json" with { type: "json" };
import type { Scan } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";
import { DETERMINERS, listed, NEGATIVES } from "./words.ts";

const NOT_DEEDS: ReadonlySet<string> = new Set(notDeeds.words);
const PEOPLE = listed("openDeedsPeople");
const BACK: ReadonlySet<string> = new Set(["back", "together"]);
const PAST: ReadonlySet<string> = new Set(irregular.verbs.flatMap(([, past = ""]) => past.split("|")));
const ADVERBS = listed("openDeedsAdverbs");

const isPast = (word: string): boolean =>
  !NOT_DEEDS.has(word) && (PAST.has(word) || isPastForm(word) || (word.length > 4 && word.endsWith("ed")));

/** The verb of a clause told of a person, or said without one at its head. */
const verbOf = (scan: Scan, clause: Clause): number | undefined => {
  for (let at = clause.from; at < Math.min(clause.to, clause.from + 7); at++) {
    const before = wordAt(scan, at - 1);
    const person = PEOPLE.has(before) || (ADVERBS.has(before) && PEOPLE.has(wordAt(scan, at - 2)));
    const head =
      at === clause.from || (at === clause.from + 1 && ["and", "so", "then", "just"].includes(before));
    if ((person || head) && isPast(wordAt(scan, at))) return at;
    if (NEGATIVES.has(wordAt(scan, at))) return undefined;
  }
  return undefined;
};

const namesThing = (scan: Scan, at: number): boolean => {
  if (!["the", "its", "my", "both"].includes(wordAt(scan, at))) return false;
  return touching(scan.components, at + 1, at + 2).some((ref) => ref.from === at + 1 || ref.from === at + 2);
};

/** Says what was worked on or with: an object, a material, or that it went back where it was. */
const hasObject = (scan: Scan, clause: Clause, verb: number): boolean => {
  const words = scan.tokens.slice(verb + 1, clause.to).map((token) => token.norm);
  const object = ["it", "them", "that", "those"].includes(words[0] ?? "") || DETERMINERS.has(words[0] ?? "");
  const material = startingIn(scan.materials, verb, clause.to).some(
    (ref) => ref.from > verb && ref.to <= clause.to,
  );
  return (
    (object && words.some((word) => BACK.has(word))) ||
    material ||
    ["it", "them"].includes(words[0] ?? "") ||
    namesThing(scan, verb + 1)
  );
};

const PRODUCTS = listed("openDeedsProducts");

/** "Dry lube on the rack": a product on a thing, with no verb at all. */
const verbless = (scan: Scan, clauses: readonly Clause[], known: readonly Deed[]): Deed[] =>
  clauses.flatMap((clause, at): Deed[] => {
    const product = startingIn(scan.materials, clause.from, clause.to).find(
      (ref) => ref.from >= clause.from && ref.from - clause.from <= 3 && PRODUCTS.has(ref.group ?? ""),
    );
    if (
      product === undefined ||
      !["on", "in", "around", "round", "over", "along"].includes(wordAt(scan, product.to))
    )
      return [];
    if (touching(known, clause.from, clause.to).some((deed) => deed.clause === at && deed.sense !== "new"))
      return [];
    const words = scan.tokens.slice(clause.from, clause.to).map((token) => token.norm);
    if (
      words.some(
        (word) =>
          ["is", "was", "has", "had", "were", "are", "the"].includes(word) &&
          words.indexOf(word) < product.from - clause.from,
      )
    )
      return [];
    return [
      {
        from: product.from,
        to: product.from,
        at: product.from - 1,
        clause: at,
        sense: "apply",
        action: null,
        status: "done",
        source: "product-on~",
      },
    ];
  });

/**
 * Deeds told with a verb that the lexicon does not know: "shimmied it back on with two clamps".
 * What was done follows from the material or from "back".
 */
export const openDeeds = (scan: Scan, clauses: readonly Clause[], known: readonly Deed[]): Deed[] => {
  const taken = tokensOf([
    ...known.map((deed) => ({ from: deed.at, to: deed.at + 1 })),
    ...scan.faults,
    ...scan.verdicts,
  ]);
  const busy = new Set(known.filter((deed) => deed.sense !== "new").map((deed) => deed.clause));
  const told = clauses.flatMap((clause, at): Deed[] => {
    if (busy.has(at) || clause.subordinate) return [];
    const verb = verbOf(scan, clause);
    if (verb === undefined || taken.has(verb) || !hasObject(scan, clause, verb)) return [];
    const back = scan.tokens.slice(verb, clause.to).some((token) => BACK.has(token.norm));
    const material = startingIn(scan.materials, verb, clause.to).some(
      (ref) => ref.from > verb && ref.to <= clause.to,
    );
    return [
      {
        from: verb,
        to: verb + 1,
        at: verb,
        clause: at,
        sense: back ? "fasten" : material ? "apply" : "generic",
        action: null,
        status: "done",
        source: "unknown-verb~",
      },
    ];
  });
  return [...told, ...verbless(scan, clauses, [...known, ...told])];
};
