import type { MaterialRef } from "../lexicon/materials.ts";
import { tokensOf } from "./ground.ts";
import { objectsOf } from "./objects.ts";
import { fits, goesIn, isMention, isOld, isTool, suffers } from "./put-in.ts";
import { replacedPart } from "./replaced.ts";
import type { Scan, Stretch } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { isWhole } from "./wholes.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const QUANTITIES = listed("phrasesQuantities");
const PART_GROUPS: ReadonlySet<string> = new Set(["part", "fastener", "wiring", "filter", "cloth"]);

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
  readonly refs: readonly Stretch[];
  readonly brands: readonly string[];
};

/** "A sheet of acrylic": how much of it. */
const isMeasure = (ref: MaterialRef, scan: Scan): boolean =>
  QUANTITIES.has(ref.name) && scan.tokens[ref.to]?.norm === "of";

const overlaps = (one: Stretch, others: readonly Stretch[]): boolean =>
  others.some((other) => one.from < other.to && other.from < one.to);

/** What was put in or on in a piece of work; old parts, tools and the thing itself left out. */
export const materialsOf = (event: Event, told: Told, scan: Scan): Used => {
  const verbs = new Set(told.deeds.filter((deed) => deed.status !== "talk").map((deed) => deed.at));
  const tests = tokensOf(told.deeds.filter((deed) => deed.sense === "look"));
  const mine: MaterialRef[] = startingIn(told.materials, event.from, event.to).filter(
    (ref) =>
      !verbs.has(ref.head) &&
      !isMeasure(ref, scan) &&
      !tests.has(ref.from) &&
      !isTool(ref, event, scan) &&
      !isOld(ref, scan) &&
      !suffers(ref, told, scan) &&
      !isWhole(told.topic.component, ref.name) &&
      !isMention(ref, told, scan) &&
      goesIn(ref, event, scan) &&
      fits(ref, event.action, scan),
  );
  const part = mine.some((ref) => ref.group !== null && PART_GROUPS.has(ref.group))
    ? undefined
    : replacedPart(event, told, scan, verbs);
  const known = part === undefined ? mine : [part, ...mine];
  const others = objectsOf(event, told, scan, verbs).filter((phrase) => !overlaps(phrase, known));
  return {
    names: dedupe([...known, ...others].map((each) => each.name)),
    refs: [...known, ...others],
    brands: mine.flatMap((ref) => [...ref.brands]),
  };
};
