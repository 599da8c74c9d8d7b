import { isSuchStuff } from "../../shared/memory/materials.ts";
import { comparePlaces } from "../../shared/memory/place.ts";
import { spanOf } from "../../shared/memory/when.ts";
import { plainWord, stemOf } from "../../shared/memory/words.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { Token } from "../lexicon/tokens.ts";
import { sizeOf } from "../read/sizes.ts";
import { keptAs, type Offer, type OfferField } from "./offer.ts";

const DENIALS: ReadonlySet<string> = new Set(
  "not no wasnt isnt werent arent didnt aint never nor nae instead rather wrong scratch strike scrap scrub forget without than said thought".split(
    " ",
  ),
);
const TURNS: ReadonlySet<string> = new Set("but it its was were actually rather meant be".split(" "));
/** As far back, in words, as a denial reaches. */
const REACH = 5;

export const saysSame = (offer: Offer, fields: RecordFields): boolean => {
  const kept = keptAs(offer.field, fields);
  if (offer.field === "material") return kept.some((each) => isSuchStuff(offer.is, each));
  if (offer.field === "where") return kept.some((each) => comparePlaces(each, offer.is) === "same");
  return kept.includes(offer.is);
};

/** How many times as much as what is kept, in steps: "58" for "85" is alike, "158" more. */
const ratioTo = (offer: Offer, fields: RecordFields): string => {
  if (offer.field !== "cost" || fields.cost === null || fields.cost <= 0) return "none";
  const ratio = Number(offer.is) / fields.cost;
  return ratio > 20 ? "vast" : ratio > 3 ? "more" : ratio < 0.05 ? "tiny" : ratio < 0.34 ? "less" : "alike";
};

const GAPS = [0, 3, 10, 35, 100, 380];

/** How many days lie between a date named and the one kept; undefined where one is not known. */
const daysFrom = (offer: Offer, fields: RecordFields): number | undefined => {
  const [one, other] = [spanOf(offer.is, "north"), spanOf(fields.date, "north")];
  return one === undefined || other === undefined ? undefined : Math.abs(one.from.until(other.from).days);
};

/** How far a date named lies from the one kept, and whether others named lie nearer. */
const gapSigns = (offer: Offer, alike: readonly Offer[], fields: RecordFields): string[] => {
  if (offer.field !== "date") return [];
  const days = daysFrom(offer, fields);
  if (days === undefined) return ["gap=none"];
  const gap = String(GAPS.find((most) => days <= most) ?? "far");
  const nearer = alike.filter((each) => {
    const other = daysFrom(each, fields);
    return other !== undefined && other > 0 && other < days;
  });
  const sign = `gap=${gap} nearer=${sizeOf(nearer.length)}`;
  return [`gap=${gap}`, sign, `gap=${gap} sort=${offer.sort}`, `${sign} sort=${offer.sort}`];
};

const wordAt = (tokens: readonly Token[], at: number): string => tokens[at]?.norm ?? "^";

/** As a sign: the denial that reaches a word from before it, and how far off. */
const denialBefore = (tokens: readonly Token[], at: number): string => {
  for (let back = 1; back <= REACH; back++) {
    const word = wordAt(tokens, at - back);
    if (DENIALS.has(word)) return `${word} ${sizeOf(back)}`;
    if (TURNS.has(word) && back > 1) return `none ${word}`;
  }
  return "none";
};

/** The word that denies what stands at a place; undefined where it is not denied. */
export const deniedBy = (tokens: readonly Token[], at: number): string | undefined => {
  const [word] = denialBefore(tokens, at).split(" ");
  return word === "none" ? undefined : word;
};

/** What of the rest of the message bears on one offer: the same for all, so worked out once. */
export type OfferScene = {
  readonly tokens: readonly Token[];
  readonly offers: readonly Offer[];
  readonly fields: RecordFields;
  /** The values that the rules would put right, as `field value`. */
  readonly ruled: ReadonlySet<string>;
  /** The stems of the note that told the record. */
  readonly told: ReadonlySet<string>;
  /** The fields for which the message names another value than the record has. */
  readonly differing: readonly OfferField[];
};

/** Whether the words of an offer stand in the note: those only say which record is meant. */
const inNote = ({ tokens, told }: OfferScene, { from, to }: Offer): string => {
  const stems = tokens.slice(from, to).map(({ norm }) => stemOf(plainWord(norm)));
  const found = stems.filter((stem) => told.has(stem)).length;
  return found === 0 ? "no" : found === stems.length ? "all" : "some";
};

/** Whether all words of an offer stand in the note that told the record. */
export const standsInNote = (scene: OfferScene, offer: Offer): boolean => inNote(scene, offer) === "all";

/** The signs, as names, that tell whether a value named in a message is what the record should say. */
export const offerSigns = (scene: OfferScene, offer: Offer): string[] => {
  const { tokens, offers, fields, ruled, differing } = scene;
  const { field, from, to, sort } = offer;
  const alike = offers.filter((each) => each.field === field && each.reckoned !== true);
  const others = alike.filter((each) => each.is !== offer.is);
  const same = saysSame(offer, fields);
  const contrasted = others.some((each) => saysSame(each, fields));
  const last = alike.every((each) => each.from <= from);
  const first = alike.every((each) => each.from >= from);
  const kept = keptAs(field, fields).length;
  const denied = denialBefore(tokens, from);
  const rule = ruled.has(`${field} ${offer.is}`)
    ? "this"
    : [...ruled].some((each) => each.startsWith(`${field} `))
      ? "other"
      : ruled.size > 0
        ? "none"
        : "silent";
  const size = sizeOf(tokens.length);
  const round = tokens.slice(Math.max(0, from - 4), from).map(({ norm }) => norm);
  const behind = tokens.slice(to, to + 4).map(({ norm }) => norm);
  const opener = wordAt(tokens, 0);
  const noted = inNote(scene, offer);
  const rivals = differing.filter((each) => each !== field).join(" ");
  const signs = [
    `same=${String(same)}`,
    `same=${String(same)} contrasted=${String(contrasted)}`,
    `contrasted=${String(contrasted)} kept=${sizeOf(kept)}`,
    `noted=${noted}`,
    `noted=${noted} same=${String(same)} denied=${denied}`,
    `noted=${noted} contrasted=${String(contrasted)}`,
    `rivals=${rivals}`,
    `rivals=${rivals} noted=${noted}`,
    `rivals=${rivals} same=${String(same)} contrasted=${String(contrasted)}`,
    ...differing.map((each) => `rival=${each} noted=${noted}`),
    `sort=${sort}`,
    ...gapSigns(offer, alike, fields),
    `ratio=${ratioTo(offer, fields)}`,
    `ratio=${ratioTo(offer, fields)} sort=${sort}`,
    `ratio=${ratioTo(offer, fields)} others=${sizeOf(others.length)}`,
    `sort=${sort} same=${String(same)}`,
    `denied=${denied}`,
    `denied=${denied} same=${String(same)}`,
    `others=${sizeOf(others.length)} place=${first ? "first" : last ? "last" : "middle"}`,
    `others=${sizeOf(others.length)} same=${String(same)} place=${first ? "first" : last ? "last" : "middle"}`,
    `rule=${rule}`,
    `rule=${rule} same=${String(same)}`,
    `rule=${rule} denied=${denied}`,
    `left=${wordAt(tokens, from - 1)}`,
    `left2=${wordAt(tokens, from - 2)} ${wordAt(tokens, from - 1)}`,
    `right=${wordAt(tokens, to)}`,
    `right2=${wordAt(tokens, to)} ${wordAt(tokens, to + 1)}`,
    `opener=${opener}`,
    `size=${size}`,
    `size=${size} same=${String(same)} others=${sizeOf(others.length)}`,
    `from=${sizeOf(from)}`,
    `ends=${String(to >= tokens.length)}`,
    ...round.map((word) => `before=${word}`),
    ...behind.map((word) => `behind=${word}`),
    ...tokens.slice(0, 24).map(({ norm }) => `word=${norm}`),
  ];
  return signs.flatMap((sign) => [sign, `${field} ${sign}`]);
};
