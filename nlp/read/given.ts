import { ADDITIONS } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import type { Deed, Given } from "./deed.ts";
import { wordAt } from "./ground.ts";
import type { Scan } from "./scan.ts";
import type { Told } from "./told.ts";
import { listed } from "./words.ts";

const NEW = new Set(["new", "fresh", "replacement", "brand"]);
const EXTRA = new Set(["second", "another", "extra", "additional"]);
const BACK = new Set(["back", "together"]);
const OVER = new Set(["over", "across"]);
const HOLES = listed("givenHoles");
const METERS = listed("givenMeters");
const PRONOUNS = new Set(["it", "that", "them", "some", "this", "one"]);

const governedByWith = (scan: Scan, at: number): boolean => {
  for (let left = at - 1; left >= at - 6 && left >= 0; left--) {
    if (wordAt(scan, left) === "with") return true;
    if (
      ["and", "on", "in", "a", "an", "of", "some", "the"].includes(wordAt(scan, left)) ||
      scan.tokens[left]?.kind === "number"
    )
      continue;
  }
  return false;
};
const SCREWS = /(?:screw|bolt|rivet|nail|tie|staple|nut|clip|lag|tapper)$/;
const LOOK_BACK = 12;

const has = (words: readonly string[], set: ReadonlySet<string>): boolean =>
  words.some((word) => set.has(word));

/** "came with that silicone in a tube and ran it all round": the material was named before the deed. */
const namedBefore = (deed: Deed, told: Told, scan: Scan) =>
  PRONOUNS.has(wordAt(scan, deed.at + 1)) && (deed.sense === "apply" || deed.sense === "fit")
    ? told.materials
        .filter(
          (ref) =>
            ref.to <= deed.at &&
            deed.at - ref.to < LOOK_BACK &&
            !told.faults.some((fault) => fault.from >= ref.to && fault.from < deed.at),
        )
        .slice(-1)
    : [];

/** The part that goes in was said to be at fault: "the latch broke, put a latch on". */
const saidBroken = (deed: Deed, told: Told): boolean =>
  told.materials.some(
    (ref) =>
      ref.to <= deed.at &&
      told.faults.some((fault) => fault.from >= ref.to && fault.from - ref.to <= 3) &&
      told.materials.some(
        (other) => other.from > deed.at && other.name.split(" ").at(-1) === ref.name.split(" ").at(-1),
      ),
  );

/** What a deed was done with and to, as far as its action depends on it. */
export const givenFor = (
  deed: Deed,
  next: Deed | undefined,
  told: Told,
  scan: Scan,
  clauses: readonly Clause[],
): Given => {
  const end = Math.min(
    next?.from ?? scan.tokens.length,
    Math.max(clauses[deed.clause]?.to ?? deed.to, deed.to),
  );
  const start = Math.min(deed.from, deed.at);
  const after = told.materials.filter(
    (ref) => ref.from >= start && ref.from < end && ref.to > deed.at && ref.head !== deed.at,
  );
  const materials = after.length > 0 ? after : namedBefore(deed, told, scan);
  const words = scan.tokens.slice(Math.max(0, start - 2), end).map((token) => token.norm);
  const near = scan.tokens.slice(start, deed.to + 2).map((token) => token.norm);
  return {
    groups: materials.flatMap((ref) => (ref.group === null ? [] : [ref.group])),
    hasNew: has(words, NEW),
    screwed: materials.some((ref) => SCREWS.test(ref.name)),
    extra:
      has(
        scan.tokens.slice(deed.at, deed.to + 2).map((token) => token.norm),
        EXTRA,
      ) && !words.includes("coat"),
    withOnly: materials.length > 0 && materials.every((ref) => governedByWith(scan, ref.from)),
    back: has(near, BACK),
    over: has(words, OVER) && has(words, HOLES),
    metered: has(words, METERS),
    addition:
      materials.some((ref) => ADDITIONS.has(ref.name) || ADDITIONS.has(ref.name.split(" ").at(-1) ?? "")) &&
      !saidBroken(deed, told),
    broken: told.faults.some((fault) => fault.from < deed.from),
    component: told.topic.component,
  };
};
