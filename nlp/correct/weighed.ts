import type { Change } from "../../shared/memory/correction.ts";
import { compareMaterials, isSuchStuff } from "../../shared/memory/materials.ts";
import { tellingStems } from "../../shared/memory/words.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { Token } from "../lexicon/tokens.ts";
import { isContainer } from "./containers.ts";
import { denialBefore, type OfferScene, offerSigns, saysSame, standsInNote } from "./offer-signs.ts";
import type { Offer, OfferField } from "./offers.ts";
import { holdsKept, isUnbound, looksUp, standsInPlace } from "./only-pointing.ts";
import stuffWords from "./stuff-words.json" with { type: "json" };

/** How sure that a value is what the record should have, instead or besides, or what it should not; 0 to 1. */
export type Rate = (signs: readonly string[]) => Readonly<Record<"in" | "also" | "drop", number>>;

/** From here on, a value is taken. */
const ENOUGH = 0.33;

type Rated = { readonly offer: Offer; readonly sure: number; readonly how: "in" | "also" | "drop" };

const keysOf = (change: Change): string[] => {
  if (change.change === "fields")
    return Object.entries(change.to).map(
      ([field, value]) => `${field} ${typeof value === "object" ? "" : String(value)}`,
    );
  if (change.change === "date") return ["date", ...("on" in change.to ? [`date ${change.to.on}`] : [])];
  if (change.change === "materials") return change.add.map((name) => `material ${name}`);
  if (change.change === "done-by") return [`who ${change.to === null ? "me" : "other"}`];
  return change.change === "number" && change.to !== null ? [`cost ${String(change.to)}`] : [change.change];
};

export const offerScene = (
  tokens: readonly Token[],
  offers: readonly Offer[],
  fields: RecordFields,
  ruled: readonly Change[],
  note: string,
): OfferScene => ({
  tokens,
  offers,
  fields,
  ruled: new Set(ruled.flatMap(keysOf)),
  told: tellingStems(note),
  differing: [
    ...new Set(
      offers.filter((offer) => offer.reckoned !== true && !saysSame(offer, fields)).map(({ field }) => field),
    ),
  ].toSorted(),
});

/** "The Sunday before, the thirteenth": a day named twice, each time in other words. */
const namedTwice = ({ offer }: Rated, { offers }: OfferScene): boolean =>
  offer.field === "date" &&
  offers.some(
    (each) =>
      each.field === "date" && each.is === offer.is && each.sort !== offer.sort && each.from >= offer.to,
  );

const best = (rated: readonly Rated[], field: OfferField, scene: OfferScene): Rated | undefined => {
  const mine = rated.filter(({ offer, how }) => offer.field === field && how !== "drop");
  const twice = mine.filter((each) => namedTwice(each, scene) && !saysSame(each.offer, scene.fields));
  return (twice.length > 0 ? twice : mine).reduce<Rated | undefined>(
    (top, each) => (top === undefined || each.sure > top.sure ? each : top),
    undefined,
  );
};

const SINGLE: readonly OfferField[] = ["component", "action", "date", "cost", "where", "who", "outcome"];

/** Named as well where all that went in is denied: "marine grease, not lithium". */
const putInstead = (drop: readonly string[], { offers, fields }: OfferScene): string[] => {
  const left = fields.materials.filter((each) => compareMaterials([each], drop) !== "same");
  if (left.length > 0) return [];
  const named = offers.filter(
    ({ field, is }) => field === "material" && !drop.includes(is) && !fields.materials.includes(is),
  );
  return named.slice(-1).map(({ is }) => is);
};

/** "The label says silicone grease, so silicone": said twice, once in short. */
const fullest = (added: readonly Rated[]): readonly Rated[] =>
  added.filter(
    ({ offer: { is } }) =>
      !added.some(({ offer }) => offer.is.length > is.length && isSuchStuff(is, offer.is)),
  );

/** "It was olive oil, the tin had run out": what stuff comes in or from is none beside it. */
const withoutContainers = (added: readonly Rated[]): readonly Rated[] =>
  added.filter(({ offer: { is } }) => !isContainer(is));

const WRITTEN: ReadonlySet<string> = new Set(stuffWords.written);

/** "It is written butyl tape": what the label says, of all that is named. */
const asWritten = (added: readonly Rated[], { tokens }: OfferScene): readonly Rated[] => {
  const written = added.filter(({ offer: { from } }) =>
    tokens.slice(Math.max(0, from - 2), from).some(({ norm }) => WRITTEN.has(norm)),
  );
  return written.length > 0 ? written : added;
};

/** "Asphalt roof cement": words for stuff with nothing between them are one name. */
const joined = (added: readonly Rated[]): readonly string[] => {
  const names: { to: number; is: string }[] = [];
  for (const { offer } of added.toSorted((a, b) => a.offer.from - b.offer.from)) {
    const before = names.at(-1);
    if (before?.to !== offer.from) names.push({ to: offer.to, is: offer.is });
    else names.splice(-1, 1, { to: offer.to, is: `${before.is} ${offer.is}` });
  }
  return [...new Set(names.map(({ is }) => is))];
};

/** "A new motor, not a wire": stuff on record that is told to be the wrong one. */
const deniedStuff = ({ offers, tokens, fields }: OfferScene): readonly string[] =>
  offers
    .filter(
      (offer) =>
        offer.field === "material" &&
        saysSame(offer, fields) &&
        DENIES.has(denialBefore(tokens, offer.from).split(" ")[0] ?? "") &&
        !tokens.slice(Math.max(0, offer.from - 2), offer.from).some(({ norm }) => ALSO.has(norm)),
    )
    .map(({ is }) => is);
/** "Not just silicone" */
const ALSO: ReadonlySet<string> = new Set("just only".split(" "));

const stuff = (rated: readonly Rated[], scene: OfferScene): Change[] => {
  const mine = rated.filter(({ offer }) => offer.field === "material");
  const named = withoutContainers(
    fullest(mine.filter(({ how, offer }) => how !== "drop" && !saysSame(offer, scene.fields))),
  );
  const add = asWritten(named, scene);
  const drop = [
    ...new Set([
      ...mine.filter(({ how }) => how === "drop").map(({ offer }) => offer.is),
      ...deniedStuff(scene),
    ]),
  ];
  if (add.length === 0)
    return drop.length === 0
      ? []
      : [{ change: "materials", drop, add: putInstead(drop, scene), how: "instead" }];
  const also = add.some(({ how }) => how === "also");
  return [{ change: "materials", drop, add: joined(add), how: also ? "also" : "instead" }];
};

const merged = (changes: readonly Change[]): Change[] => {
  const to: Partial<RecordFields> = Object.assign(
    {},
    ...changes.map((change) => (change.change === "fields" ? change.to : {})),
  ) as Partial<RecordFields>;
  const others = changes.filter(({ change }) => change !== "fields");
  return Object.keys(to).length > 0 ? [{ change: "fields", to }, ...others] : others;
};

/** What the rules found to put in where a message seems only to take stuff away. */
export const orRuled = (changes: readonly Change[], ruled: readonly Change[]): readonly Change[] => {
  const [only, ...others] = changes;
  const emptied = only?.change === "materials" && only.add.length === 0 && others.length === 0;
  return emptied && ruled.some(({ change }) => change !== "remove") ? ruled : changes;
};

/** What is surely a correction puts something right: the likeliest value of one of these fields, from here on. */
const LEFT: ReadonlySet<OfferField> = new Set(["date", "cost", "material", "where", "who", "outcome"]);
const LEAST = 0.04;

const likeliest = (rated: readonly Rated[], { fields }: OfferScene): readonly Rated[] => {
  const left = rated.filter(
    ({ offer, how, sure }) =>
      LEFT.has(offer.field) && how !== "drop" && sure >= LEAST && !saysSame(offer, fields),
  );
  return left.toSorted((a, b) => b.sure - a.sure).slice(0, 1);
};

/** Whether the message says that the thing on record is the wrong one. */
const thingIsDenied = (rated: readonly Rated[], { tokens, offers, fields }: OfferScene): boolean =>
  offers.some(
    (offer) =>
      offer.field === "component" &&
      offer.is === fields.component &&
      (DENIES.has(tokens[offer.from - 1]?.norm ?? "") || DENIES.has(tokens[offer.from - 2]?.norm ?? "")),
  ) || rated.some(({ offer, how }) => offer.is === fields.component && how === "drop");
const DENIES: ReadonlySet<string> = new Set("not isnt wasnt arent werent never".split(" "));
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

/** Without the things that only tell where the one on record is. */
const withoutPlaces = (all: readonly Rated[], scene: OfferScene): readonly Rated[] => {
  const rated = all.filter(({ offer }) => !isPutInstead(offer, scene));
  if (placeIsDenied(scene) && rated.some(({ offer }) => offer.field === "where"))
    return rated.filter(({ offer }) => offer.field !== "component");
  if (thingIsDenied(rated, scene)) return rated;
  const places = rated.flatMap(({ offer, how }) => (how === "drop" ? [] : [offer]));
  return rated.filter(
    ({ offer }) =>
      !standsInPlace(offer, places, scene.fields) && !isPartTold(offer, scene) && !qualifies(offer, scene),
  );
};

/** What a message puts right in a record, of all the values that it names; something where it is `surely` a correction. */
export const weighedChanges = (scene: OfferScene, rate: Rate, surely = false): Change[] => {
  const all = scene.offers.map((offer): Rated => {
    const sure = rate(offerSigns(scene, offer));
    const how = (["in", "also", "drop"] as const).reduce((top, each) =>
      sure[each] > sure[top] ? each : top,
    );
    return { offer, sure: sure[how], how };
  });
  const enough = all.filter(({ sure }) => sure >= ENOUGH);
  const left = enough.filter(({ offer }) => !isUnbound(offer, scene.tokens));
  const rated = withoutPlaces(left.length === 0 && surely ? likeliest(all, scene) : left, scene);
  const single = SINGLE.flatMap((field) => {
    const top = best(rated, field, scene);
    return top === undefined || saysSame(top.offer, scene.fields) ? [] : [top.offer];
  });
  const added = stuff(rated, scene);
  const more = single.filter((offer) => !holdsKept(offer, scene.fields) && !looksUp(offer));
  const kept = more.length + added.length > 0 ? more : single;
  return merged([...kept.map(({ change }) => change), ...added]);
};
