import type { Token } from "../lexicon/tokens.ts";
import data from "./no-trouble.json" with { type: "json" };
import type { Stretch } from "./stretch.ts";

const OTHERS: ReadonlySet<string> = new Set(data.others);
const DOES: ReadonlySet<string> = new Set(data.does);
const EATS: ReadonlySet<string> = new Set(data.eats);
const FOOD: ReadonlySet<string> = new Set(data.food);

const SEASONS: ReadonlySet<string> = new Set(data.seasons);
const BEGINS: ReadonlySet<string> = new Set(data.begins);

/** As far before food, in words, as it is said to be eaten. */
const NEAR = 3;

/** "The rain wont quit", "having my chips on the step": sounds like trouble and is none of the rig's. */
export const isNoTrouble = (tokens: readonly Token[], { from }: Stretch): boolean => {
  const word = (at: number): string => tokens[at]?.norm ?? "";
  const verb = DOES.has(word(from - 1)) ? from - 1 : from;
  if (DOES.has(word(verb)) && OTHERS.has(word(verb - 1))) return true;
  if (SEASONS.has(word(from)) && word(from - 1) === "the" && BEGINS.has(word(from + 1))) return true;
  return (
    FOOD.has(word(from)) && tokens.slice(Math.max(0, from - NEAR), from).some(({ norm }) => EATS.has(norm))
  );
};
