import type { ComponentId } from "../../shared/vocabulary.ts";
import { KIND_WORDS, WHOLES } from "../lexicon/lexicon.ts";
import { singular } from "../lexicon/tokens.ts";

/** Whether a name means the whole component and says nothing of its kind: "new pump" for the water pump, not "compressor fridge". */
export const isWhole = (component: ComponentId, name: string): boolean => {
  const words = name.split(" ");
  const said = [...words.slice(0, -1), singular(words.at(-1) ?? "")].join(" ");
  return (WHOLES.get(component) ?? []).some((whole) => {
    if (said !== whole && !said.endsWith(` ${whole}`)) return false;
    const before = said.slice(0, said.length - whole.length).split(" ");
    return !before.some((word) => KIND_WORDS.has(word));
  });
};
