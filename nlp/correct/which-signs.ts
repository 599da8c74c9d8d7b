import { Temporal } from "temporal-polyfill";
import { compareMaterials } from "../../shared/memory/materials.ts";
import { comparePlaces } from "../../shared/memory/place.ts";
import { compareWhen, dayOf, spanOf } from "../../shared/memory/when.ts";
import { tellingStems } from "../../shared/memory/words.ts";
import type { Hemisphere, Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { Described } from "../read/described.ts";
import { scan } from "../read/scan.ts";
import { sizeOf } from "../read/sizes.ts";
import type { TimeMention } from "../time/index.ts";
import type { Offer, OfferField } from "./offer.ts";
import { offersIn } from "./offers.ts";

/** A record that a message may put right, and whether it is one of those told of last. */
export type Candidate = {
  readonly fields: RecordFields;
  /** The note that told it. */
  readonly words?: string;
  readonly isLast: boolean;
};

/** What a message names, by which one of several records can be told from the others. */
type Named = {
  readonly of: (field: OfferField) => readonly Offer[];
  readonly times: readonly TimeMention[];
  readonly words: readonly string[];
  readonly stems: ReadonlySet<string>;
};

const namedIn = (text: string, moment: Moment, fields: RecordFields): Named => {
  const offers = offersIn(text, moment, fields).filter(({ reckoned }) => reckoned !== true);
  const found = scan(text, moment);
  return {
    of: (field) => offers.filter((offer) => offer.field === field),
    times: found.times.map(({ time }) => time),
    words: found.tokens.map(({ norm }) => norm),
    stems: tellingStems(text),
  };
};

type Agreement = "none" | "same" | "other" | "alike" | "unknown";

const named = (offers: readonly Offer[], kept: string | null): Agreement =>
  offers.length === 0
    ? "none"
    : kept === null
      ? "unknown"
      : offers.some(({ is }) => is === kept)
        ? "same"
        : "other";

const placed = (offers: readonly Offer[], kept: string | null): Agreement => {
  const likenesses = offers.map(({ is }) => comparePlaces(is, kept));
  if (likenesses.length === 0) return "none";
  return likenesses.includes("same") ? "same" : likenesses.includes("different") ? "other" : "unknown";
};

const made = (offers: readonly Offer[], kept: readonly string[]): Agreement => {
  if (offers.length === 0) return "none";
  const likeness = compareMaterials(
    offers.map(({ is }) => is),
    kept,
  );
  return likeness === "different" ? "other" : likeness;
};

/** A sum that was misread or turned round is seldom far off. */
const paid = (offers: readonly Offer[], kept: number | null): Agreement => {
  if (offers.length === 0) return "none";
  if (kept === null || kept === 0) return "unknown";
  if (offers.some(({ is }) => Number(is) === kept)) return "same";
  return offers.some(({ is }) => Number(is) / kept > 1 / 2 && Number(is) / kept < 2) ? "alike" : "other";
};

/** "In November", of a record of some November. */
const comesAgain = ({ again }: TimeMention, kept: string | null, hemisphere: Hemisphere): boolean => {
  const span = spanOf(kept, hemisphere);
  if (again === undefined || span === undefined) return false;
  const last = span.to.subtract({ days: 1 });
  const time = spanOf(again(last, -1), hemisphere);
  return time !== undefined && Temporal.PlainDate.compare(span.from, time.to) < 0;
};

const dated = ({ times }: Named, kept: string | null, moment: Moment): string => {
  if (times.length === 0) return "none";
  const { hemisphere } = moment;
  const today = dayOf(moment);
  const likenesses = times.map(({ edtf }) => compareWhen(edtf, kept, hemisphere, today));
  const best = (["same", "within", "near"] as const).find((each) => likenesses.includes(each));
  if (best !== undefined) return best;
  return times.some((time) => comesAgain(time, kept, hemisphere)) ? "another year" : "apart";
};

const ORDERS: ReadonlyMap<string, "first" | "last"> = new Map([
  ["first", "first"],
  ["original", "first"],
  ["initial", "first"],
  ["earlier", "first"],
  ["last", "last"],
  ["latest", "last"],
  ["newest", "last"],
  ["second", "last"],
  ["latter", "last"],
]);

const FIELDS = ["thing", "deed", "place", "stuff", "cost", "time"] as const;
type Agreements = Readonly<Record<(typeof FIELDS)[number], string>>;

const agreementsOf = (said: Named, { fields }: Candidate, moment: Moment): Agreements => ({
  thing: named(said.of("component"), fields.component),
  deed: named(said.of("action"), fields.action),
  place: placed(said.of("where"), fields.where),
  stuff: made(said.of("material"), fields.materials),
  cost: paid(said.of("cost"), fields.cost),
  time: dated(said, fields.date, moment),
});

const AGREES: ReadonlySet<string> = new Set(["same", "within"]);
const pointsOf = (agreements: Agreements): number =>
  FIELDS.filter((field) => AGREES.has(agreements[field])).length;

const FIFTHS = [0.03, 0.1, 0.25, 0.5, 0.8];
const fifthOf = (sure: number): string => String(FIFTHS.filter((least) => sure >= least).length);

/** How likely the words of a message speak of the thing of each candidate, whether or not they name it. */
const spokenSigns = (candidates: readonly Candidate[], spoken: Described): readonly string[] => {
  const sureOf = ({ fields }: Candidate): number => spoken.get(fields.component) ?? 0;
  const order = [...new Set(candidates.map(sureOf))].toSorted((a, b) => b - a);
  return candidates.map((each) => `spoken=${fifthOf(sureOf(each))} ${sizeOf(order.indexOf(sureOf(each)))}`);
};

/**
 * The signs, as names, of each record that a message may put right: how well it agrees with what the message names, and
 * with what its words speak of.
 */
export const whichSigns = (
  text: string,
  moment: Moment,
  candidates: readonly Candidate[],
  minutes: number,
  spoken: Described,
): string[][] => {
  const [first] = candidates;
  if (first === undefined) return [];
  const said = namedIn(text, moment, first.fields);
  const rated = candidates.map((each) => {
    const agreements = agreementsOf(said, each, moment);
    const told = tellingStems(each.words ?? "");
    const shared = [...said.stems].filter((stem) => told.has(stem)).length;
    return { each, agreements, points: pointsOf(agreements), shared };
  });
  const mostShared = Math.max(...rated.map(({ shared }) => shared));
  const most = Math.max(...rated.map(({ points }) => points));
  const order = said.words.flatMap((word) => ORDERS.get(word) ?? [])[0] ?? "none";
  const speaks = spokenSigns(candidates, spoken);
  const ago = minutes <= 20 ? "just" : minutes <= 180 ? "hours" : minutes <= 2880 ? "days" : "long";
  return rated.map(({ each, agreements, points, shared }, at) => {
    const last = each.isLast ? `last ${ago}` : "older";
    const alike = rated.filter((other) => other.each.fields.component === each.fields.component);
    const nth = alike.findIndex((other) => other.each === each);
    const place = nth === 0 ? "newest" : nth === alike.length - 1 ? "oldest" : "between";
    const tied = rated.filter((other) => other.points === points).length;
    const standing = points < most ? `behind ${sizeOf(most - points)}` : tied > 1 ? "tied" : "ahead";
    const asMany = rated.filter((other) => other.shared === shared).length;
    const wording = `wording=${shared < mostShared ? `behind ${sizeOf(mostShared - shared)}` : asMany > 1 ? "tied" : "ahead"}`;
    const tiedBefore = rated.slice(0, at).filter((other) => other.points === points).length;
    const pairs = FIELDS.map((field) => `${field}=${agreements[field]}`);
    const plain = [
      ...pairs,
      `standing=${standing}`,
      `points=${sizeOf(points)}`,
      `shared=${sizeOf(shared)}`,
      `shared=${sizeOf(shared)} of ${sizeOf(said.stems.size)}`,
      wording,
      `${wording} standing=${standing}`,
      `${wording} ${agreements.thing}`,
      speaks[at] ?? "",
      `${speaks[at] ?? ""} ${agreements.thing}`,
      `${speaks[at] ?? ""} standing=${standing}`,
      `kind=${each.fields.kind}`,
      `newer tied=${sizeOf(tiedBefore)}`,
      `order=${order} ${place}`,
      `place in line=${place}`,
      `standing=${standing} newer tied=${sizeOf(tiedBefore)}`,
    ];
    return [
      `last=${last}`,
      ...plain,
      ...plain.map((sign) => `${last} ${sign}`),
      ...pairs.map((sign) => `${agreements.thing} ${sign}`),
      ...pairs.map((sign) => `${agreements.thing} ${standing} ${sign}`),
    ];
  });
};
