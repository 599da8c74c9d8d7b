import type { Change } from "../../shared/memory/correction.ts";
import { tellingStems } from "../../shared/memory/words.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { Token } from "../lexicon/tokens.ts";
import type { Offer, OfferField } from "./offer.ts";
import { type OfferScene, offerSigns, saysSame } from "./offer-signs.ts";
import { holdsKept, isBystander, isUnbound, looksUp } from "./only-pointing.ts";
import { withoutPlaces } from "./other-thing.ts";
import type { Rate, Rated } from "./rated.ts";
import { stuffChanges } from "./weighed-stuff.ts";

/** From here on, a value is taken. */
const ENOUGH = 0.33;

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

/** The surest value of a field; bad beside better is both: "it does still drip, but less than it was". */
const best = (rated: readonly Rated[], field: OfferField, scene: OfferScene): Rated | undefined => {
  const mine = rated.filter(({ offer, how }) => offer.field === field && how !== "drop");
  const half = field === "outcome" ? mine.find(({ offer }) => offer.is === "partly") : undefined;
  if (half !== undefined && mine.some(({ offer }) => offer.is === "failed")) return half;
  const twice = mine.filter((each) => namedTwice(each, scene) && !saysSame(each.offer, scene.fields));
  return (twice.length > 0 ? twice : mine).reduce<Rated | undefined>(
    (top, each) => (top === undefined || each.sure > top.sure ? each : top),
    undefined,
  );
};

const SINGLE: readonly OfferField[] = ["component", "action", "date", "cost", "where", "who", "outcome"];

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

const IT_IS: ReadonlySet<string> = new Set("its was is".split(" "));
const WE: ReadonlySet<string> = new Set("i we".split(" "));
const PUT: ReadonlySet<string> = new Set("put used laid stuck went had screwed glued".split(" "));

/** "It's marine plywood I put there": said in so many words to be what went in. */
const isPutByName = ({ field, from, to }: Offer, tokens: readonly Token[]): boolean =>
  field === "material" &&
  IT_IS.has(tokens[from - 1]?.norm ?? "") &&
  WE.has(tokens[to]?.norm ?? "") &&
  PUT.has(tokens[to + 1]?.norm ?? "");

/** What a message puts right in a record, of all the values that it names; something where it is `surely` a correction. */
export const weighedChanges = (scene: OfferScene, rate: Rate, surely = false): Change[] => {
  const all = scene.offers.map((offer): Rated => {
    if (isPutByName(offer, scene.tokens)) return { offer, sure: 1, how: "in" };
    const sure = rate(offerSigns(scene, offer));
    const how = (["in", "also", "drop"] as const).reduce((top, each) =>
      sure[each] > sure[top] ? each : top,
    );
    return { offer, sure: sure[how], how };
  });
  const bound = all.filter(({ offer }) => !isUnbound(offer, scene.tokens));
  const left = bound.filter(({ sure }) => sure >= ENOUGH);
  const hardly = bound.filter(({ offer }) => !isBystander(offer, scene.tokens));
  const rated = withoutPlaces(left.length === 0 && surely ? likeliest(hardly, scene) : left, scene);
  const single = SINGLE.flatMap((field) => {
    const top = best(rated, field, scene);
    return top === undefined || saysSame(top.offer, scene.fields) ? [] : [top.offer];
  });
  const added = stuffChanges(rated, scene);
  const more = single.filter((offer) => !holdsKept(offer, scene.fields) && !looksUp(offer));
  const kept = more.length + added.length > 0 ? more : single;
  return merged([...kept.map(({ change }) => change), ...added]);
};
