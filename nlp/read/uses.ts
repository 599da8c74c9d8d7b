import type { Action } from "../../shared/vocabulary.ts";
import { DROP, SPELLER, TOOLS } from "../lexicon/lexicon.ts";
import type { MaterialRef } from "../lexicon/materials.ts";
import { nameOf } from "../lexicon/materials.ts";
import { plain } from "../lexicon/tokens.ts";
import type { Event, Told } from "./events.ts";
import type { Scan } from "./scan.ts";
import { AUXILIARIES, DETERMINERS, GENERIC_PARTS, PREPOSITIONS, SUBJECTS } from "./words.ts";

const word = (scan: Scan, at: number): string => scan.tokens[at]?.norm ?? "";

/** Actions for which something unknown may be what was put in or on. */
const OPEN_ACTIONS: ReadonlySet<Action> = new Set([
  "patch",
  "seal",
  "refasten",
  "reinforce",
  "rebuild",
  "replace",
  "install",
  "repair",
]);
const REMOVED = new Set([
  "old",
  "original",
  "existing",
  "rotten",
  "rotted",
  "bad",
  "broken",
  "cracked",
  "worn",
  "dead",
]);
const SERVICE: ReadonlySet<Action> = new Set(["inspect", "test", "tighten", "reset", "adjust"]);

/** Index of the word that governs a noun phrase: the first to the left that is no determiner or adjective. */
const governor = (scan: Scan, at: number): number => {
  let left = at - 1;
  while (
    left >= 0 &&
    (DETERMINERS.has(word(scan, left)) ||
      DROP.has(word(scan, left)) ||
      scan.tokens[left]?.kind === "number" ||
      ["of", "-", "/", "couple", "coats", "coat", "inch"].includes(word(scan, left)))
  )
    left--;
  return left;
};

const isTool = (ref: MaterialRef, scan: Scan): boolean => {
  const head = scan.tokens[ref.head];
  return TOOLS.has(ref.name) && (head === undefined || TOOLS.has(head.stem));
};

const isOld = (ref: MaterialRef, scan: Scan): boolean =>
  [1, 2].some((back) => REMOVED.has(word(scan, ref.from - back)));

/** Said to be at fault or the subject of a verdict: "the rivet sheared off". */
const suffers = (ref: MaterialRef, told: Told, scan: Scan): boolean => {
  const before = word(scan, ref.from - 1);
  const next = told.faults.find((fault) => fault.from >= ref.to && fault.from <= ref.to + 3);
  if (next === undefined) return false;
  const between = scan.tokens.slice(ref.to, next.from).map((token) => token.norm);
  return (
    (before === "the" || before === "that") &&
    !between.some((each) => ["and", "on", "in", "so", "i"].includes(each))
  );
};

const componentWord = (ref: MaterialRef, told: Told): boolean => {
  const named = told.topic.mentions.flatMap((mention) => mention.words.split(" "));
  return (
    ref.name.split(" ").every((each) => named.includes(each)) &&
    named.includes(ref.name.split(" ").at(-1) ?? "")
  );
};

const governed = (ref: MaterialRef, event: Event, scan: Scan): boolean => {
  const by = governor(scan, ref.from);
  const left = word(scan, by);
  if (["with", "using", "used", "in", "into", "for", "to", "plus", "and", "between"].includes(left))
    return true;
  return (
    event.deeds.some((deed) => deed.sense !== "prep" && ref.from > deed.at - 3) ||
    ["on", "over"].includes(left)
  );
};

const prepOnly = (ref: MaterialRef, event: Event): boolean => {
  const nearest = [...event.deeds].reverse().find((deed) => deed.at < ref.from);
  return nearest?.sense === "prep" && ref.from - nearest.to <= 3;
};

/** Unknown things put on: "tied it back on with a shoelace". */
const unknownAfterWith = (event: Event, known: readonly MaterialRef[], told: Told, scan: Scan): string[] => {
  if (!OPEN_ACTIONS.has(event.action)) return [];
  const found: string[] = [];
  for (const deed of event.deeds) {
    for (let at = deed.at; at < Math.min(deed.at + 14, event.to); at++) {
      if (word(scan, at) !== "with" && word(scan, at) !== "using") continue;
      const name = nounPhrase(scan, at + 1);
      if (name === undefined) continue;
      if (known.some((ref) => ref.from < name.to && name.from < ref.to)) continue;
      if (told.topic.mentions.some((ref) => ref.from < name.to && name.from < ref.to)) continue;
      const text = nameOf(scan.tokens.slice(name.from, name.to));
      if (!TOOLS.has(text) && !TOOLS.has(text.split(" ").at(-1) ?? "")) found.push(text);
    }
  }
  return [...new Set(found)];
};

const nounPhrase = (scan: Scan, at: number): { from: number; to: number } | undefined => {
  let from = at;
  const first = word(scan, from);
  if (!["a", "an", "some", "two", "three", "four", "new", "fresh"].includes(first)) return undefined;
  while (
    DETERMINERS.has(word(scan, from)) ||
    DROP.has(word(scan, from)) ||
    scan.tokens[from]?.kind === "number"
  )
    from++;
  let to = from;
  while (to < scan.tokens.length && to - from < 2) {
    const token = scan.tokens[to];
    if (
      token?.kind !== "word" ||
      PREPOSITIONS.has(token.norm) ||
      SUBJECTS.has(token.norm) ||
      DETERMINERS.has(token.norm) ||
      AUXILIARIES.has(token.norm) ||
      ["and", "so", "but", "then", "just", "now", "today", "because"].includes(token.norm)
    )
      break;
    to++;
  }
  return to > from ? { from, to } : undefined;
};

const dedupe = (names: readonly string[]): string[] => {
  const out: string[] = [];
  for (const name of names) {
    const words = name.split(" ");
    const covered = out.findIndex((other) => words.every((each) => other.split(" ").includes(each)));
    if (covered >= 0) continue;
    const wider = out.findIndex((other) => other.split(" ").every((each) => words.includes(each)));
    if (wider >= 0) out[wider] = name;
    else out.push(name);
  }
  return out;
};

export type Used = {
  readonly names: readonly string[];
  readonly refs: readonly MaterialRef[];
  readonly brands: readonly string[];
};

/** What was put in or on in a piece of work, old parts, tools and the thing itself left out. */
export const materialsOf = (event: Event, told: Told, scan: Scan): Used => {
  const refs = told.materials.filter(
    (ref) =>
      ref.from >= event.from &&
      ref.from < event.to &&
      !isTool(ref, scan) &&
      !isOld(ref, scan) &&
      !suffers(ref, told, scan) &&
      !prepOnly(ref, event) &&
      governed(ref, event, scan) &&
      !(
        SERVICE.has(event.action) &&
        (ref.group === "part" || ref.group === "fastener" || ref.group === "wiring")
      ) &&
      !(
        (event.action === "clean" ||
          event.action === "lubricate" ||
          event.action === "flush" ||
          event.action === "charge") &&
        ["part", "fastener", "wiring", "sheet", "metal", "timber", "cloth"].includes(ref.group ?? "")
      ) &&
      !componentWord(ref, told),
  );
  const names = dedupe([...refs.map((ref) => ref.name), ...unknownAfterWith(event, refs, told, scan)]);
  return { names, refs, brands: refs.flatMap((ref) => [...ref.brands]) };
};

void GENERIC_PARTS;
void SPELLER;
void plain;
