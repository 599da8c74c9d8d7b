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

/** All values that a message names, as what they would put right in a record. */
export const offersIn = (text: string, moment: Moment, fields: RecordFields): readonly Offer[] => {
  const { found, words, before, behind } = heard(scan(text, moment));
  const said: Said = { found, words, fields, moment };
  const known = [...before, ...dates(said), ...sums(said), ...behind].filter(
    (offer) => !isThingItself(offer, said),
  );
  const unknown = unknownStuffsIn(found.tokens, known).map((at) =>
    stuff(at, words.slice(at.from, at.to).join(" "), "unknown"),
  );
  return [...known, ...unknown];
};
