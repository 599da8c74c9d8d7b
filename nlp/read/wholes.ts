import { COMPONENTS, type ComponentId } from "../../shared/vocabulary.ts";
import { KEEP, PLACES, WHOLES } from "../lexicon/lexicon.ts";
import { singular } from "../lexicon/tokens.ts";

const COMPONENT_WORDS: ReadonlySet<string> = new Set(COMPONENTS.flatMap((id) => id.split("-")));
const PLACE_WORDS: ReadonlySet<string> = new Set(
  [...PLACES.sides, ...PLACES.ends, ...PLACES.rooms].flatMap((place) => place.split(" ")),
);

/** "Seven pin", "two way": which size of the same. */
const COUNTING = new Set(["pin", "way", "double", "part", "two", "nine", "volt", "amp", "inch"]);

/** Words that say what kind of thing it is, and neither which one nor where: "digital", "led", "stainless". */
const saysKind = (word: string): boolean =>
  KEEP.has(word) && !COUNTING.has(word) && !COMPONENT_WORDS.has(word) && !PLACE_WORDS.has(word);

/** Whether a name means the whole component and says nothing of its kind: "new pump" for the water pump, not "compressor fridge". */
export const isWhole = (component: ComponentId, name: string): boolean => {
  const words = name.split(" ");
  const said = [...words.slice(0, -1), singular(words.at(-1) ?? "")].join(" ");
  return (WHOLES.get(component) ?? []).some((whole) => {
    if (said !== whole && !said.endsWith(` ${whole}`)) return false;
    return !said
      .slice(0, said.length - whole.length)
      .split(" ")
      .some(saysKind);
  });
};
