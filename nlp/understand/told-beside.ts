import type { Shown } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { saysSame } from "../correct/offer-signs.ts";
import { type Offer, type OfferField, offersIn } from "../correct/offers.ts";
import { scan, type Stretch } from "../read/scan.ts";

/** Where one of several things told may end and the next begin. */
const SEAM = /[.,;:!?\n]+(?=\s|$)|\s(?=(?:but|while|whereas|though|although)\b)|\s(?=and (?:the|my|our|that|those)\b)/gi;

/** Values that are put right; a thing named again is which record is meant. */
const VALUES: ReadonlySet<OfferField> = new Set(["date", "cost", "material", "who", "where", "outcome"]);

const clausesIn = (text: string, moment: Moment): readonly Stretch[] => {
  const { tokens } = scan(text, moment);
  const seams = [...text.matchAll(SEAM)].map(({ index }) => index);
  const cuts = seams.map((seam) => tokens.findIndex(({ start }) => start >= seam)).filter((at) => at > 0);
  const starts = [0, ...new Set(cuts)];
  return starts.map((from, at) => ({ from, to: starts[at + 1] ?? tokens.length }));
};

const within = (offer: Stretch, clauses: readonly Stretch[]): boolean =>
  clauses.some(({ from, to }) => from <= offer.from && offer.to <= to);

type Owned = { readonly shown: Shown; readonly offers: readonly Offer[] };

/** The stretches of the text that speak of each record: from where its thing is named to where another's is. */
const ownersOf = (text: string, moment: Moment, records: readonly Shown[]): readonly Owned[] => {
  const clauses = clausesIn(text, moment);
  const offered = records.map((shown) => offersIn(text, moment, shown.fields));
  const names = (at: number, clause: Stretch): boolean =>
    (offered[at] ?? []).some(
      (offer) =>
        offer.field === "component" && offer.is === records[at]?.fields.component && within(offer, [clause]),
    );
  let owner: number | undefined;
  const owners = clauses.map((clause) => {
    const named = records.flatMap((_, at) => (names(at, clause) ? [at] : []));
    owner = named.length === 1 ? named[0] : named.length > 1 ? undefined : owner;
    return owner;
  });
  return records.map((shown, at) => {
    const own = clauses.filter((_, clause) => owners[clause] === at);
    return { shown, offers: (offered[at] ?? []).filter((offer) => within(offer, own)) };
  });
};

/** Whether a value is named that is not the one on record, by whatever reading. */
const differs = ({ shown, offers }: Owned): boolean =>
  offers.some(
    (offer) =>
      VALUES.has(offer.field) &&
      offer.sort !== "unknown" &&
      !offers.some((each) => each.field === offer.field && each.from === offer.from && saysSame(each, shown.fields)),
  );

/**
 * "The pipes were today, yes, but the alarm went up on Wednesday": of several records told at once and named again, the
 * one beside whose name another value stands, with the values that stand there.
 */
export const toldBeside = (text: string, moment: Moment, records: readonly Shown[]): Owned | undefined => {
  const named = ownersOf(text, moment, records).filter(({ offers }) => offers.length > 0);
  const things = new Set(named.map(({ shown }) => shown.fields.component));
  if (things.size < 2 || things.size < named.length) return undefined;
  const other = named.filter(differs);
  return other.length === 1 ? other[0] : undefined;
};
