import { kinOf } from "../../shared/memory/families.ts";
import { spanDays, spanOf } from "../../shared/memory/when.ts";
import type { RecordFields } from "../../shared/record.ts";
import people from "../lexicon/data/people.json" with { type: "json" };
import type { Token } from "../lexicon/tokens.ts";
import type { Stretch } from "../read/scan.ts";
import { bareDate, type Offer } from "./offer.ts";

const overlaps = (a: Stretch, b: Stretch): boolean => a.from < b.to && b.from < a.to;

/** "It isn't by the door, it's in front of the shower": a thing named in the place said is not the thing worked on. */
export const standsInPlace = (offer: Offer, places: readonly Offer[], { component }: RecordFields): boolean =>
  offer.field === "component" &&
  !kinOf(component).some((kin) => kin === offer.is) &&
  places.some((place) => place.field === "where" && place.sort === "phrase" && overlaps(place, offer));

const NEAR_DAYS = 7;

/** "The springs at Easter": a time that holds the day on record, or comes near it where it is no exact one. */
export const holdsKept = (offer: Offer, { date }: RecordFields): boolean => {
  const { change } = offer;
  if (change.change !== "date" || !("on" in change.to)) return false;
  const [said, kept] = [spanOf(change.to.on, "north"), spanOf(date, "north")];
  if (said === undefined || kept === undefined || bareDate(date) === offer.is) return false;
  const days = said.from.until(kept.from).days;
  const within = days >= 0 && days + spanDays(kept) <= spanDays(said);
  return within || (change.to.on.endsWith("~") && Math.abs(days) <= NEAR_DAYS);
};

/** "I looked at the tube": how one knows is no work, where something else is put right. */
export const looksUp = ({ field, is }: Offer): boolean => field === "action" && is === "inspect";

const AT_LEISURE: ReadonlySet<string> = new Set(
  "nobody anybody somebody everybody someone anyone he hes she shes they theyre i im when a the my his her".split(
    " ",
  ),
);

/** A message so short has no story in it. */
const SHORT = 10;
const AS_DOER: ReadonlySet<string> = new Set(people.works);
const MAKES_DOER: ReadonlySet<string> = new Set(
  "by was were is twas had got paid hired asked his hers".split(" "),
);
/** As far behind somebody what he did may stand: "my cousin who lives next door fitted". */
const DOES_WITHIN = 6;
/** What may stand between: "it was actually dave". */
const BETWEEN: ReadonlySet<string> = new Set("actually really just all only done fixed fitted".split(" "));

/** "My husband is wheezing", "she called it half a fix": somebody in the story, of whom no work is told. */
export const isBystander = ({ field, is, from, to }: Offer, tokens: readonly Token[]): boolean =>
  field === "who" &&
  is === "other" &&
  tokens.length > SHORT &&
  !tokens.slice(to, to + DOES_WITHIN).some(({ norm }) => AS_DOER.has(norm)) &&
  !MAKES_DOER.has(tokens.slice(0, from).findLast(({ norm }) => !BETWEEN.has(norm))?.norm ?? "");

/** "Nobody free for the brakes" is about no money. */
export const isUnbound = ({ field, is, from }: Offer, tokens: readonly Token[]): boolean =>
  field === "cost" &&
  is === "0" &&
  tokens[from]?.norm === "free" &&
  AT_LEISURE.has(tokens[from - 1]?.norm ?? "");
