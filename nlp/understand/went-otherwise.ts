import type { Change } from "../../shared/memory/correction.ts";
import type { Shown } from "../../shared/memory/scene.ts";
import type { Offer } from "../correct/offer.ts";
import { saysSame } from "../correct/offer-signs.ts";
import { takesBackAt } from "../correct/takes-back.ts";
import type { Scan } from "../read/scan.ts";
import type { Meant } from "./lately.ts";

/** In minutes: so soon, how it went is how it was told wrongly. */
const AT_ONCE = 15;
/** As sure as this that something is put right, or that it is word on what was done. */
const HARDLY = 0.2;

export const isAtOnce = (minutes: number | null): boolean => minutes !== null && minutes < AT_ONCE;

const outcomesIn = (offers: readonly Offer[]): readonly Offer[] =>
  offers.filter(({ field }) => field === "outcome");

/**
 * "That was wishful, I haven't tried it yet", "not every time, more like one go in two": told as good, and not so. `heard` is
 * how sure it is that the words are about what was told, from 0 to 1.
 */
export const wentOtherwise = (
  offers: readonly Offer[],
  { outcome }: Shown["fields"],
  heard: number,
): Change | undefined => {
  const told = outcomesIn(offers);
  const last = told.at(-1);
  const isOther = outcome === "holding" && told.every((each) => each.is !== "holding");
  return isOther && (heard > HARDLY || last?.is === "untested") ? last?.change : undefined;
};

/** As many words as may stand between "strike" and how it was told to go. */
const STRUCK_WITHIN = 3;

/** "Please strike 'holding well', I haven't had it out yet": not the record, but how it is told to have gone. */
export const struckVerdict = ({ shown, offers }: Meant, { tokens }: Scan): Change | undefined => {
  const words = tokens.map(({ norm, kind }) => (kind === "mark" ? "" : norm));
  const lead = words.findIndex((_, at) => takesBackAt(words, at));
  const told = outcomesIn(offers);
  const struck = told.find(
    (offer) =>
      lead >= 0 && offer.from > lead && offer.from - lead <= STRUCK_WITHIN && saysSame(offer, shown.fields),
  );
  if (struck === undefined) return undefined;
  const instead = told.find((offer) => offer.from > struck.from && !saysSame(offer, shown.fields));
  return instead?.change ?? { change: "fields", to: { outcome: "untested" } };
};
