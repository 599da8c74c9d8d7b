import type { Action, ComponentId } from "../../shared/vocabulary.ts";
import { DROP, TOOLS } from "../lexicon/lexicon.ts";
import { type MaterialRef, nameOf } from "../lexicon/materials.ts";
import { singular } from "../lexicon/tokens.ts";
import type { Deed } from "./deed.ts";
import { tokensOf, wordAt } from "./ground.ts";
import type { Scan } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { unknownThings } from "./unknown-things.ts";
import { startingIn, touching } from "./windows.ts";
import { DETERMINERS, listed } from "./words.ts";

const NEW = listed("usesNew");
const OLD = listed("usesOld");
const PART_GROUPS: ReadonlySet<string> = new Set(["part", "fastener", "wiring", "filter", "cloth"]);
const SOLID_GROUPS = listed("usesSolidGroups");
/** Work that uses up nothing but fluids, cleaners and grease. */
const SERVICE: ReadonlySet<Action> = new Set([
  "clean",
  "lubricate",
  "flush",
  "charge",
  "tighten",
  "reset",
  "adjust",
]);
const BARE: ReadonlySet<Action> = new Set(["inspect", "test", "tighten", "reset", "remove"]);

/** Index of the word that governs a noun phrase: the first to the left that is no determiner, number or adjective. */
const governor = (scan: Scan, at: number): number => {
  let left = at - 1;
  while (left >= 0) {
    const text = wordAt(scan, left);
    const passes =
      DETERMINERS.has(text) ||
      DROP.has(text) ||
      scan.tokens[left]?.kind === "number" ||
      ["of", "-", "/", "couple", "coats", "coat", "inch", "some", "dab", "bead", "tube"].includes(text);
    if (!passes) return left;
    left--;
  }
  return left;
};

const saysNew = (scan: Scan, ref: MaterialRef): boolean => {
  const by = governor(scan, ref.from);
  if (wordAt(scan, by) === "and") {
    const before = touching(scan.materials, by, by).find((other) => other.to === by);
    if (before !== undefined && saysNew(scan, before)) return true;
  }
  for (let at = ref.from - 1; at > by; at--) if (NEW.has(wordAt(scan, at))) return true;
  return NEW.has(wordAt(scan, ref.from));
};

const isTool = (ref: MaterialRef): boolean => TOOLS.has(ref.name);

const isOld = (ref: MaterialRef, scan: Scan): boolean => {
  const by = governor(scan, ref.from);
  for (let at = ref.from - 1; at > by; at--) if (OLD.has(wordAt(scan, at))) return true;
  return false;
};

/** Said to be at fault: "the rivet sheared off". */
const suffers = (ref: MaterialRef, told: Told, scan: Scan): boolean => {
  const next = told.faults.find((fault) => fault.from >= ref.to && fault.from <= ref.to + 3);
  if (next === undefined || saysNew(scan, ref)) return false;
  const between = scan.tokens.slice(ref.to, next.from).map((token) => token.norm);
  return !between.some((each) => ["and", "on", "in", "so", "i", "where", "over"].includes(each));
};

const selfWords = (component: ComponentId): readonly string[] => {
  const words = component.split("-");
  return [words.at(-1) ?? component, component.replaceAll("-", " ")];
};
const SAME: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    tire: ["tyre"],
    refrigerator: ["fridge"],
    stove: ["hob", "cooktop", "cooker"],
    faucet: ["tap"],
    solar: ["panel"],
    "gas-cylinder": ["bottle"],
    furnace: ["heater"],
    "water-heater": ["boiler"],
    "entry-step": ["steps"],
    media: ["tv", "antenna"],
    suspension: [],
    furniture: [],
    window: ["window"],
  }),
);

/** The thing itself and no part of it: "new pump" for the water pump, but not "compressor fridge" for the fridge. */
const isItself = (ref: MaterialRef, told: Told): boolean => {
  const words = ref.name.split(" ");
  const head = words.at(-1) ?? "";
  const own = [...selfWords(told.topic.component), ...(SAME.get(told.topic.component) ?? [])];
  if (!own.includes(head) && !own.includes(singular(head))) return false;
  const named = told.topic.mentions.flatMap((mention) => mention.words.split(" "));
  const ids = told.topic.component.split("-");
  return words.slice(0, -1).every((each) => named.includes(each) || ids.includes(each));
};

const isIndefinite = (scan: Scan, ref: MaterialRef): boolean => {
  const left = scan.tokens[ref.from - 1];
  return left?.kind === "number" || ["a", "an", "some", "two", "three", "four"].includes(left?.norm ?? "");
};

/** Only the name of what is worked on ("the drain valve"), not something put in. */
const isMention = (ref: MaterialRef, told: Told, scan: Scan): boolean =>
  !isIndefinite(scan, ref) &&
  told.topic.mentions.some((mention) => mention.from < ref.to && ref.from < mention.to) &&
  !saysNew(scan, ref) &&
  wordAt(scan, governor(scan, ref.from)) !== "with";

const nearestDeed = (event: Event, ref: MaterialRef): Deed | undefined =>
  event.deeds.findLast((deed) => deed.at < ref.to);

const APART_FROM = listed("usesApartFrom");
const TRADES = /^(?:swap|switch|trade|exchange|change)~/;

/** The direct object of its deed: nothing but the verb's own words before the noun phrase. */
const isObject = (ref: MaterialRef, deed: Deed, scan: Scan): boolean => {
  const by = governor(scan, ref.from);
  return by >= deed.at && by < Math.max(deed.to, deed.at + 1);
};

const joinedTo = (ref: MaterialRef, event: Event, scan: Scan): boolean => {
  const by = governor(scan, ref.from);
  if (wordAt(scan, by) !== "and" && wordAt(scan, by) !== "plus") return false;
  const before = touching(scan.materials, by, by).find((other) => other.to === by);
  return before !== undefined && goesIn(before, event, scan);
};

/** Whether a part or fastener went in: new, after "with", as the object of a deed that puts things in, or beside one that did. */
const solidGoesIn = (ref: MaterialRef, deed: Deed, by: string, event: Event, scan: Scan): boolean => {
  if (["with", "using", "used"].includes(by) || saysNew(scan, ref) || joinedTo(ref, event, scan)) return true;
  if (by === "for") return TRADES.test(deed.source);
  if (by === "in" && ref.group === "timber") return true;
  const number =
    scan.tokens[ref.from - 1]?.kind === "number" ||
    ["two", "three", "four", "six", "eight"].includes(wordAt(scan, ref.from - 1));
  if (number && ref.group === "fastener" && ref.from - deed.to <= 3) return true;
  return isObject(ref, deed, scan) && ["fit", "fasten", "apply", "new"].includes(deed.sense);
};

/** Whether what stands here went in or on: after a deed, with a word of means, or new. */
const goesIn = (ref: MaterialRef, event: Event, scan: Scan): boolean => {
  const by = wordAt(scan, governor(scan, ref.from));
  const deed = nearestDeed(event, ref);
  const isNew = saysNew(scan, ref);
  if (deed === undefined)
    return isNew && event.deeds.some((each) => each.sense === "new" && each.from - ref.to <= 3);
  if (deed.sense === "prep" && !isNew && by !== "with") return false;
  if (ref.from > deed.to + 25) return false;
  if (SOLID_GROUPS.has(ref.group ?? "")) return solidGoesIn(ref, deed, by, event, scan);
  return !APART_FROM.has(by) || isObject(ref, deed, scan);
};

const fits = (ref: MaterialRef, action: Action, scan: Scan): boolean => {
  if (BARE.has(action))
    return (
      wordAt(scan, governor(scan, ref.from)) === "with" && action === "tighten" && ref.group === "adhesive"
    );
  if (action === "adjust")
    return (
      ["metal", "fastener", "timber", "part"].includes(ref.group ?? "") &&
      wordAt(scan, governor(scan, ref.from)) === "with"
    );
  if (SERVICE.has(action) && SOLID_GROUPS.has(ref.group ?? ""))
    return action === "lubricate" && saysNew(scan, ref);
  return true;
};

/** "so new jack on": the thing itself was replaced. */
const newItself = (deed: Deed, told: Told, scan: Scan): boolean =>
  [...told.materials.filter((ref) => isItself(ref, told)), ...told.topic.mentions].some(
    (ref) =>
      ref.from >= deed.from &&
      ref.from <= deed.to + 3 &&
      ["new", "another", "replacement", "whole"].some((word) => wordAt(scan, ref.from - 1) === word),
  );

/** For a replacement that names no new part, the part that was replaced: "the gfci won't reset, replaced it". */
const replacedPart = (event: Event, told: Told, scan: Scan): MaterialRef | undefined => {
  const deed = event.deeds.find(
    (each) => (each.sense === "deed" && each.action === "replace") || each.sense === "new",
  );
  if (deed === undefined || event.action !== "replace") return undefined;
  if (newItself(deed, told, scan)) return undefined;
  const parts = told.materials.filter(
    (ref) => ref.group !== null && PART_GROUPS.has(ref.group) && !isItself(ref, told) && !isTool(ref),
  );
  const after = parts.find(
    (ref) =>
      ref.from >= deed.at &&
      ref.from <= deed.to + 5 &&
      governor(scan, ref.from) <= deed.to &&
      governor(scan, ref.from) >= deed.at,
  );
  if (after !== undefined) return after;
  const next = wordAt(scan, deed.at + 1);
  const passive = scan.tokens
    .slice(Math.max(0, deed.at - 3), deed.at)
    .some((token) => ["was", "were", "been", "got", "i", "we", "he", "she"].includes(token.norm));
  if (!["it", "that", "them", "those", "one"].includes(next) && !passive && deed.sense !== "new")
    return undefined;
  return parts.findLast((ref) => ref.to <= deed.at && ref.from >= event.from && deed.at - ref.to <= 14);
};

const dedupe = (names: readonly string[]): string[] => {
  const out: string[] = [];
  for (const name of names) {
    const words = name.split(" ");
    if (out.some((other) => words.every((each) => other.split(" ").includes(each)))) continue;
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

/** What was put in or on in a piece of work; old parts, tools and the thing itself left out. */
export const materialsOf = (event: Event, told: Told, scan: Scan): Used => {
  const verbs = new Set(told.deeds.filter((deed) => deed.status !== "talk").map((deed) => deed.at));
  const tests = tokensOf(told.deeds.filter((deed) => deed.sense === "look"));
  const mine = startingIn(told.materials, event.from, event.to).filter(
    (ref) =>
      ref.from >= event.from &&
      ref.from < event.to &&
      !verbs.has(ref.head) &&
      !tests.has(ref.from) &&
      !isTool(ref) &&
      !isOld(ref, scan) &&
      !suffers(ref, told, scan) &&
      !isItself(ref, told) &&
      !isMention(ref, told, scan) &&
      goesIn(ref, event, scan) &&
      fits(ref, event.action, scan),
  );
  const part = mine.some((ref) => ref.group !== null && PART_GROUPS.has(ref.group))
    ? undefined
    : replacedPart(event, told, scan);
  const refs = part === undefined ? mine : [part, ...mine];
  const others = unknownThings(event, refs, told, scan).map(({ from, to }) =>
    nameOf(scan.tokens.slice(from, to)),
  );
  return {
    names: dedupe([...refs.map((ref) => ref.name), ...others]),
    refs,
    brands: refs.flatMap((ref) => [...ref.brands]),
  };
};
