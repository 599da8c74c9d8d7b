import { isSameHead } from "../../shared/memory/materials.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { Token } from "../lexicon/tokens.ts";
import { isPartOf } from "../read/ground.ts";
import type { Stretch } from "../read/scan.ts";
import { isContainer } from "./containers.ts";
import type { Offer } from "./offer.ts";
import { type OfferScene, saysSame, standsInNote } from "./offer-signs.ts";
import { standsInPlace } from "./only-pointing.ts";
import { DENIES, type Rated } from "./rated.ts";
import { deniedStuff } from "./weighed-stuff.ts";

/** Whether the message says that the thing on record is the wrong one. */
const thingIsDenied = (rated: readonly Rated[], { tokens, offers, fields }: OfferScene): boolean =>
  offers.some(
    (offer) =>
      offer.field === "component" &&
      offer.is === fields.component &&
      (DENIES.has(tokens[offer.from - 1]?.norm ?? "") || DENIES.has(tokens[offer.from - 2]?.norm ?? "")),
  ) || rated.some(({ offer, how }) => offer.is === fields.component && how === "drop");

/** "Above the bed, no the sink" */
const DENIES_PLACE: ReadonlySet<string> = new Set([...DENIES, "no", "nae"]);

/** The sink, of what is on record as above the sink. */
const namesPlace = (
  { field, is, from, to }: Offer,
  tokens: readonly Token[],
  { component, where }: RecordFields,
): boolean =>
  field === "component" &&
  is !== component &&
  where !== null &&
  ` ${where} `.includes(
    ` ${tokens
      .slice(from, to)
      .map(({ norm }) => norm)
      .join(" ")} `,
  );

/** "The dinette, not the bedroom": whether the message says that the place on record is the wrong one. */
const placeIsDenied = ({ tokens, offers, fields }: OfferScene): boolean =>
  offers.some(
    (offer) =>
      ((offer.field === "where" && saysSame(offer, fields)) || namesPlace(offer, tokens, fields)) &&
      [1, 2, 3].some((back) => DENIES_PLACE.has(tokens[offer.from - back]?.norm ?? "")),
  );

/** "It wasn't a catch, it was a magnet": what is told in place of stuff on record is stuff, and no thing. */
const isPutInstead = (offer: Offer, scene: OfferScene): boolean =>
  offer.field === "component" &&
  offer.is !== scene.fields.component &&
  deniedStuff(scene).length > 0 &&
  scene.offers.some((each) => each.field === "material" && each.from <= offer.from && offer.to <= each.to);

/** "Gray side valve": where the valve on record is, and no other thing. */
const qualifies = (offer: Offer, { offers, tokens, fields }: OfferScene): boolean =>
  offer.field === "component" &&
  offer.is !== fields.component &&
  offers.some(
    (each) =>
      each.field === "component" &&
      each.is === fields.component &&
      each.from >= offer.to &&
      each.from - offer.to <= 2 &&
      tokens.slice(offer.to, each.from).every(({ norm }) => QUALIFYING.has(norm)),
  );
const QUALIFYING: ReadonlySet<string> = new Set("side tank line s end".split(" "));

/** "The valve", of a toilet told of with that word: a part of it, and no other thing. */
const isPartTold = (offer: Offer, scene: OfferScene): boolean =>
  offer.field === "component" &&
  offer.is !== scene.fields.component &&
  offer.sort !== "named" &&
  standsInNote(scene, offer);

const WHERE_STUFF_WENT: ReadonlySet<string> = new Set(
  "round around on in into along under over behind".split(" "),
);
const POINTS: ReadonlySet<string> = new Set("the that this my our".split(" "));

/** "What I squeezed round that frame was urethane", of a window: where on it the stuff went, and no other thing. */
const isWhereStuffWent = ({ field, from, to, is }: Offer, { offers, tokens, fields }: OfferScene): boolean =>
  field === "component" &&
  is !== fields.component &&
  to - from === 1 &&
  isPartOf(fields.component, tokens[from]?.norm ?? "") &&
  POINTS.has(tokens[from - 1]?.norm ?? "") &&
  WHERE_STUFF_WENT.has(tokens[from - 2]?.norm ?? "") &&
  offers.some((each) => each.field === "material" && !saysSame(each, fields));

const isWithin = (inner: Stretch, outer: Stretch): boolean =>
  outer.from <= inner.from && inner.to <= outer.to;

/** "A brass elbow", where a poly elbow is on record: stuff of that sort, and no other thing. */
const isStuffOnRecord = (offer: Offer, { offers, fields }: OfferScene): boolean => {
  if (offer.field !== "component" || offer.is === fields.component) return false;
  const stuffs = offers.filter(({ field }) => field === "material");
  const like = stuffs.filter(({ is }) => fields.materials.some((kept) => isSameHead(is, kept)));
  return (
    like.some((each) => isWithin(offer, each)) ||
    (offer.sort === "weak" && like.length > 0 && stuffs.some((each) => isWithin(offer, each)))
  );
};

/** "Wrong bottle, it was sewing machine oil": what the stuff came in. */
const isContainerNamed = (offer: Offer, { offers, tokens }: OfferScene): boolean =>
  offer.field === "component" &&
  offer.sort === "weak" &&
  isContainer(tokens[offer.to - 1]?.norm ?? "") &&
  offers.some(({ field }) => field === "material");

/** "The ceiling panel was over the dinette": the thing on record is named, and another tells where it is. */
const tellsWhereItIs = (offer: Offer, { offers, fields }: OfferScene): boolean =>
  offer.is !== fields.component &&
  offers.some(({ field, is, to }) => field === "component" && is === fields.component && to <= offer.from) &&
  offers.some((each) => each.field === "where" && isWithin(offer, each));

const isStuffNamed = (offer: Offer, scene: OfferScene): boolean =>
  isWhereStuffWent(offer, scene) ||
  isPutInstead(offer, scene) ||
  isStuffOnRecord(offer, scene) ||
  isContainerNamed(offer, scene);

/** Whether what seems to be another thing is stuff, or what stuff came in, or where the thing on record is. */
export const isNoOtherThing = (offer: Offer, scene: OfferScene): boolean =>
  isStuffNamed(offer, scene) || tellsWhereItIs(offer, scene);

/** Without the things that only tell where the one on record is. */
export const withoutPlaces = (all: readonly Rated[], scene: OfferScene): readonly Rated[] => {
  const rated = all.filter(({ offer }) => !isStuffNamed(offer, scene));
  if (placeIsDenied(scene) && rated.some(({ offer }) => offer.field === "where"))
    return rated.filter(({ offer }) => offer.field !== "component");
  if (thingIsDenied(rated, scene)) return rated;
  const places = rated.flatMap(({ offer, how }) => (how === "drop" ? [] : [offer]));
  return rated.filter(
    ({ offer }) =>
      !standsInPlace(offer, places, scene.fields) &&
      !tellsWhereItIs(offer, scene) &&
      !isPartTold(offer, scene) &&
      !qualifies(offer, scene),
  );
};
