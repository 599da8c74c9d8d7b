import { type Action, type ComponentId, systemOf } from "../../shared/vocabulary.ts";
import { APPLIED, GENERIC, type MaterialClass } from "../lexicon/lexicon.ts";
import type { Deed, Given } from "./deed.ts";

const FASTENERS: ReadonlySet<MaterialClass> = new Set(["fastener", "adhesive"]);

const fitted = (
  { groups, hasNew, extra, broken, over, back, addition, screwed }: Given,
  action: Action | null,
): Action => {
  if (groups.includes("lubricant")) return "lubricate";
  if (groups.length > 0 && groups.every((group) => FASTENERS.has(group) || group === "sealant") && screwed)
    return "refasten";
  if (back && !extra) return "refasten";
  if (extra) return "install";
  if (hasNew) return "replace";
  if (groups.includes("sealant") && !groups.includes("part")) return "seal";
  if (groups.includes("tape") || groups.includes("cloth") || groups.includes("resin")) return "patch";
  if (over && (groups.includes("sheet") || groups.includes("timber"))) return "patch";
  if (groups.includes("metal")) return "reinforce";
  if (groups.includes("paint")) return "seal";
  if (groups.includes("fluid")) return "charge";
  if (groups.includes("sheet") || groups.includes("timber")) return broken ? "patch" : "install";
  if (groups.includes("part") && !addition) return "replace";
  return broken && groups.length === 0 ? "replace" : (action ?? "install");
};

const fastened = ({ groups, hasNew, back, over, withOnly }: Given): Action => {
  if (back || (withOnly && !hasNew)) return "refasten";
  if (over && groups.some((group) => ["sheet", "timber", "cloth", "tape", "metal"].includes(group)))
    return "patch";
  if (groups.includes("cloth")) return "patch";
  if (groups.includes("metal") || groups.includes("timber")) return "reinforce";
  if (hasNew && groups.some((group) => !FASTENERS.has(group))) return "replace";
  return "refasten";
};

/** What pouring something in does depends on what it is poured into. */
const fluidAction = (component: ComponentId, group: MaterialClass): Action => {
  if (
    ["sink", "shower", "faucet", "toilet", "dump-valve", "tank-sensor"].includes(component) ||
    group === "cleaner"
  )
    return "clean";
  return systemOf(component) === "water" ? "flush" : "charge";
};

const applied = (given: Given): Action | null => {
  const { groups, hasNew } = given;
  if (hasNew && groups.some((group) => group === "part" || group === "filter" || group === "wiring"))
    return "replace";
  const group = groups.find((each) => each !== "part" && each !== "fastener") ?? groups[0];
  if (group === "fluid" || group === "cleaner") return fluidAction(given.component, group);
  return group === undefined ? null : (APPLIED.get(group) ?? null);
};

const REDONE: readonly (readonly [MaterialClass, Action])[] = [
  ["sealant", "seal"],
  ["wiring", "rewire"],
  ["lubricant", "lubricate"],
];

/** "redid the caulk", "did the bearings": the material says what was done, else the component. */
const redone = ({ groups, component, back }: Given): Action => {
  if (back) return "refasten";
  return REDONE.find(([group]) => groups.includes(group))?.[1] ?? GENERIC.get(component) ?? "repair";
};

/** The action of a deed once it is known what it was done with and to; null when it says nothing. */
export const settle = (deed: Pick<Deed, "sense" | "action">, given: Given): Action | null => {
  switch (deed.sense) {
    case "fit":
      return fitted(given, deed.action);
    case "fasten":
      return fastened(given);
    case "apply":
      return applied(given);
    case "generic":
      return redone(given);
    case "new":
      return given.extra ? "install" : "replace";
    case "look":
      return given.metered ? "test" : deed.action;
    case "deed":
      return deed.action === "repair" && given.hasNew && given.groups.includes("part")
        ? "replace"
        : deed.action;
    case "prep":
      return deed.action;
  }
};
