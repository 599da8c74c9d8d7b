import { VERB_MATERIALS } from "../lexicon/lexicon.ts";
import type { MaterialRef } from "../lexicon/materials.ts";
import { tokensOf } from "./ground.ts";
import { andMore, objectsOf } from "./objects.ts";
import {
  fits,
  goesIn,
  isMention,
  isOld,
  isOtherWord,
  isPutIn,
  isTool,
  isTradedAway,
  suffers,
} from "./put-in.ts";
import { replacedPart } from "./replaced.ts";
import type { Scan, Stretch } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { isWhole } from "./wholes.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const QUANTITIES = listed("phrasesQuantities");
const PART_GROUPS: ReadonlySet<string> = new Set(["part", "fastener", "wiring", "filter", "cloth"]);

/** Each name once, and none that a fuller one says. */
export const dedupe = (names: readonly string[]): string[] => {
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
  readonly refs: readonly (Stretch & { readonly name: string })[];
  readonly brands: readonly string[];
  /** Other stuff was named that had let go before. */
  readonly gone?: boolean;
};

/** "A sheet of acrylic": how much of it. */
const isMeasure = (ref: MaterialRef, scan: Scan): boolean =>
  QUANTITIES.has(ref.name) && scan.tokens[ref.to]?.norm === "of";

const overlaps = (one: Stretch, others: readonly Stretch[]): boolean =>
  others.some((other) => one.from < other.to && other.from < one.to);

/** "Duct taped it": the verb says with what. */
const inVerbs = (event: Event, scan: Scan): string[] =>
  event.deeds.flatMap(({ at }) => {
    const verb = scan.tokens[at]?.norm ?? "";
    const two = `${scan.tokens[at - 1]?.norm ?? ""} ${verb}`;
    const next = `${verb} ${scan.tokens[at + 1]?.norm ?? ""}`;
    return [VERB_MATERIALS.get(two) ?? VERB_MATERIALS.get(next) ?? VERB_MATERIALS.get(verb) ?? []].flat();
  });

/** What was put in or on in a piece of work; old parts, tools and the thing itself left out. */
export const materialsOf = (event: Event, told: Told, scan: Scan): Used => {
  const verbs = new Set(told.deeds.filter((deed) => deed.status !== "talk").map((deed) => deed.at));
  const tests = tokensOf(told.deeds.filter((deed) => deed.sense === "look"));
  const mine: MaterialRef[] = startingIn(told.materials, event.from, event.to).filter(
    (ref) =>
      !verbs.has(ref.head) &&
      !isMeasure(ref, scan) &&
      !isOtherWord(ref, scan) &&
      !tests.has(ref.from) &&
      !isTool(ref, event, scan) &&
      !isOld(ref, scan) &&
      !isTradedAway(ref, event, scan) &&
      !suffers(ref, told, scan) &&
      !isWhole(told.topic.component, ref.name) &&
      (!isMention(ref, told, scan) || isPutIn(ref, event, scan)) &&
      goesIn(ref, event, told, scan) &&
      fits(ref, event.action, scan),
  );
  const part = mine.some((ref) => ref.group !== null && PART_GROUPS.has(ref.group))
    ? undefined
    : replacedPart(event, told, scan, verbs);
  const replaced = part === undefined ? [] : andMore(part, event.to, scan, verbs);
  const known = [...replaced, ...mine.filter((ref) => !overlaps(ref, replaced))];
  const others = objectsOf(event, told, scan, verbs).filter((phrase) => !overlaps(phrase, known));
  const spoken = [...known, ...others];
  return {
    names: dedupe([...spoken.map((each) => each.name), ...(spoken.length > 0 ? [] : inVerbs(event, scan))]),
    refs: spoken,
    brands: mine.flatMap((ref) => [...ref.brands]),
  };
};
