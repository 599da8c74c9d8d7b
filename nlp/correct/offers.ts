import { kinOf } from "../../shared/memory/families.ts";
import type { Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import { scan } from "../read/scan.ts";
import { dates } from "./dated-offers.ts";
import { heard } from "./named-offers.ts";
import { type Offer, type Said, stuff } from "./offer.ts";
import { sums } from "./sum-offers.ts";
import { unknownStuffsIn } from "./unknown-stuff.ts";

const ON: ReadonlySet<string> = new Set(["on", "of", "for"]);

/** "On the trim" says which thing is meant, and not where it is. */
const isThingItself = ({ field, from, to }: Offer, { words, found, fields }: Said): boolean =>
  field === "where" &&
  ON.has(words[from] ?? "") &&
  found.components.some((ref) => ref.id === fields.component && ref.from > from && ref.to === to);

/** As many words have nothing but a name in them: "rails, I mean". */
const FEW_WORDS = 6;
const STANDS_FOR: ReadonlySet<string> = new Set(["one", "ones"]);

/** "The gas one" of an alarm, "the rails" of a slide's seal: of all that a loose name may stand for what is akin to the thing on record. */
const asAkin =
  ({ words, fields: { component } }: Said) =>
  (offer: Offer): Offer => {
    const kin = new Set<string>([component, ...kinOf(component)]);
    const isBare = words.length <= FEW_WORDS || STANDS_FOR.has(words[offer.to] ?? "");
    const akin = isBare && !kin.has(offer.is) ? offer.senses?.find((each) => kin.has(each)) : undefined;
    return akin === undefined
      ? offer
      : { ...offer, is: akin, akin: true, change: { change: "fields", to: { component: akin } } };
  };

/** All values that a message names, as what they would put right in a record. */
export const offersIn = (text: string, moment: Moment, fields: RecordFields): readonly Offer[] => {
  const { found, words, before, behind } = heard(scan(text, moment));
  const said: Said = { found, words, fields, moment };
  const known = [...before.map(asAkin(said)), ...dates(said), ...sums(said), ...behind].filter(
    (offer) => !isThingItself(offer, said),
  );
  const unknown = unknownStuffsIn(found.tokens, known).map((at) =>
    stuff(at, words.slice(at.from, at.to).join(" "), "unknown"),
  );
  return [...known, ...unknown];
};
