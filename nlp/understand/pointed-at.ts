import { without } from "../../shared/memory/part.ts";
import { shareAny, tellingStems } from "../../shared/memory/words.ts";
import { componentName } from "../../shared/vocabulary.ts";
import { saysSame } from "../correct/offer-signs.ts";
import type { Meant } from "./lately.ts";

/** Words that point at nothing, though both notes have them. */
const ANYTHING: ReadonlySet<string> = tellingStems(
  "new old one put got get took fit buy bought good back first last",
);

/** Whether a message says anything by which an older record may be known: a value, its thing, its stuff, a word of its note. */
export const isPointedAt = ({ minutes, denied, offers, shown }: Meant, text: string): boolean => {
  const { fields, words } = shown;
  const told = [words ?? "", fields.fault ?? "", ...fields.materials, componentName(fields.component)];
  return (
    minutes !== null ||
    denied ||
    offers.some((offer) => offer.reckoned !== true && saysSame(offer, fields)) ||
    shareAny(without(tellingStems(text), ANYTHING), tellingStems(told.join(" ")))
  );
};
