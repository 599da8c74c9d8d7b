import { Temporal } from "temporal-polyfill";
import { capital } from "../../shared/capital.ts";
import { changedDate } from "../../shared/memory/amend-date.ts";
import type { Change, DateChange } from "../../shared/memory/correction.ts";
import { dayOf, spanOf } from "../../shared/memory/when.ts";
import type { Moment } from "../../shared/reading.ts";
import type { Edtf, RecordFields } from "../../shared/record.ts";
import { deedsIn } from "../ask/deeds.ts";
import { mentionsIn } from "../ask/names.ts";
import people from "../lexicon/data/people.json" with { type: "json" };
import { isGivenName } from "../lexicon/lexicon.ts";
import { placeTokensOf } from "../read/ground.ts";
import { mayBeInCents } from "../read/prices.ts";
import { type Scan, type Stretch, scan, type TimeRef } from "../read/scan.ts";
import { Places } from "../read/where.ts";
import { isContainer } from "./containers.ts";
import { isNumberOf } from "./numbered.ts";
import { insteadOf } from "./person.ts";
import { plain } from "./pieces.ts";
import { shiftIn } from "./shift.ts";
import { unknownStuffsIn } from "./unknown-stuff.ts";
import { wayOf, workedOut } from "./worked-out.ts";

export type OfferField = "component" | "action" | "date" | "cost" | "material" | "where" | "who" | "outcome";

/** A value that a message names and that may take the place of what a record says. */
export type Offer = Stretch & {
  readonly field: OfferField;
  readonly change: Change;
  /** The value as text, to compare: an id, EDTF without "~", a number, the words. */
  readonly is: string;
  /** What sort of value it is within its field. */
  readonly sort: string;
  /** Not said, but worked out from what is. */
  readonly reckoned?: true;
};

const PEOPLE: ReadonlySet<string> = new Set(people.who);
const SELF: ReadonlySet<string> = new Set(["myself", "me", "ourselves"]);

export const bareDate = (edtf: string | null): string => (edtf ?? "").replace(/~/g, "");

type Heard = { readonly found: Scan; readonly words: readonly string[] };
type Said = Heard & { readonly fields: RecordFields; readonly moment: Moment };

const overlaps = (a: Stretch, b: Stretch): boolean => a.from < b.to && b.from < a.to;

const things = ({ found, words }: Heard): Offer[] => {
  /** "The black tin" names no tank. */
  const isTin = (to: number): boolean => isContainer(words[to] ?? "");
  const all = found.components.filter(({ to, weak }) => !(weak && isTin(to)));
  const named = all.map(
    ({ from, to, id, weak }): Offer => ({
      from,
      to,
      field: "component",
      change: { change: "fields", to: { component: id } },
      is: id,
      sort: weak ? "weak" : "named",
    }),
  );
  /** "Lithium grease" names no battery. */
  const stuffs = found.materials.filter((each) => each.to - each.from > 1 && each.group !== "part");
  const nicknamed = mentionsIn(words).flatMap((mention): Offer[] =>
    [...named, ...stuffs].some((each) => overlaps(each, mention)) || isTin(mention.to)
      ? []
      : mention.named.slice(0, 1).map(
          ({ component, sure }): Offer => ({
            from: mention.from,
            to: mention.to,
            field: "component",
            change: { change: "fields", to: { component } },
            is: component,
            sort: sure >= 0.8 ? "nick" : "group",
          }),
        ),
  );
  return [...named, ...nicknamed];
};

const works = ({ words }: Heard): Offer[] =>
  deedsIn(words).flatMap(({ from, to, actions }) =>
    actions.slice(0, 2).map(
      (action, at): Offer => ({
        from,
        to,
        field: "action",
        change: { change: "fields", to: { action } },
        is: action,
        sort: at === 0 ? "first" : "also",
      }),
    ),
  );

/** "Twenty twenty three": a year, and no sum. */
const FIRST_YEAR = 1990;
const LAST_YEAR = 2049;
const isYear = (number: Scan["numbers"][number]): boolean =>
  number.kind === "run" && number.value >= FIRST_YEAR && number.value <= LAST_YEAR;

/** Work that is done was not done on a day to come. */
const isAhead = (date: Edtf, moment: Moment): boolean => {
  const span = spanOf(date, moment.hemisphere);
  return span !== undefined && Temporal.PlainDate.compare(span.from, dayOf(moment)) > 0;
};

const dateOffer = (at: Stretch, to: DateChange, sort: string, { fields, moment }: Said): Offer[] => {
  const date = changedDate(to, fields.date, moment.hemisphere);
  return date === null || (fields.kind !== "todo" && isAhead(date, moment))
    ? []
    : [{ from: at.from, to: at.to, field: "date", change: { change: "date", to }, is: bareDate(date), sort }];
};

const shiftSort = (change: DateChange): string => Object.keys(change)[0] ?? "on";

const LAST_DAY = 31;

/** "The Wednesday", "in July": nearest to the day on record, on both sides of it, however long ago that was. */
const besideKept = (ref: TimeRef, said: Said): Offer[] => {
  const { again, edtf } = ref.time;
  const kept = spanOf(said.fields.date, said.moment.hemisphere);
  if (again === undefined || kept === undefined) return [];
  const near = { before: again(kept.to.subtract({ days: 1 }), -1), after: again(kept.from, 1) };
  return (["before", "after"] as const).flatMap((side) =>
    near[side] === edtf || (side === "after" && near.after === near.before)
      ? []
      : dateOffer(ref, { on: near[side] }, side, said),
  );
};

const dates = (said: Said): Offer[] => {
  const { found } = said;
  const shift = shiftIn(plain(found.text));
  const whole = { from: 0, to: found.tokens.length };
  const days = found.numbers.filter(
    (number) =>
      number.kind === "ordinal" &&
      number.value <= LAST_DAY &&
      !found.times.some((ref) => overlaps(ref, number)),
  );
  return [
    ...found.times.flatMap((ref) => [
      ...dateOffer(ref, { on: ref.time.edtf }, ref.time.role, said),
      ...besideKept(ref, said),
    ]),
    ...days.flatMap((number) => dateOffer(number, { dayOfMonth: number.value }, "ordinal", said)),
    ...(shift === undefined ? [] : dateOffer(whole, shift, shiftSort(shift), said)),
  ];
};

/** How often the one sum goes into the other. */
const farFrom = (sum: number, kept: number): number => Math.abs(Math.log(sum / kept));

/** "He took one twenty", of a hundred and forty: no one and twenty hundredths. */
const asCents = (number: Scan["numbers"][number], kept: number | null): boolean =>
  mayBeInCents(number) &&
  (kept === null || kept === 0 || farFrom(number.value / 100, kept) < farFrom(number.value, kept));

const sums = ({ found, words, fields }: Said): Offer[] => {
  const offer = (at: Stretch, cost: number, sort: string): Offer => ({
    from: at.from,
    to: at.to,
    field: "cost",
    change: { change: "fields", to: { cost } },
    is: String(cost),
    sort,
  });
  const money = found.amounts.filter(({ what }) => what === "money");
  const taken: readonly Stretch[] = [...found.amounts, ...found.times, ...found.components];
  const bare = found.numbers.filter(
    (number) =>
      (number.kind === "cardinal" || number.kind === "run") &&
      !isYear(number) &&
      !taken.some((each) => overlaps(each, number)) &&
      number.value > 0 &&
      !isNumberOf(number, found.tokens) &&
      !(number.to - number.from === 1 && words[number.from] === "one"),
  );
  const whole = <T extends Stretch>(all: readonly T[]): readonly T[] =>
    fields.cost === null ? all : all.filter((each) => wayOf(each, found) === undefined);
  return [
    ...whole(money).map((amount) => offer(amount, amount.value, "money")),
    ...whole(bare).map((number) => offer(number, number.value, "bare")),
    ...bare
      .filter((number) => asCents(number, fields.cost))
      .map((number) => offer(number, number.value / 100, "cents")),
    ...workedOut(found, [...money, ...bare], fields.cost).map(
      (each): Offer => ({ ...offer(each, each.cost, each.how), reckoned: true }),
    ),
  ];
};

const stuff = ({ from, to }: Stretch, name: string, sort: string): Offer => ({
  from,
  to,
  field: "material",
  change: { change: "materials", drop: [], add: [name], how: "instead" },
  is: name,
  sort,
});

const stuffs = ({ found }: Heard): Offer[] =>
  found.materials.map((material) => stuff(material, material.name, material.group ?? "other"));

/** "Would I please get it right": no place. */
const SPOKEN = /\b(?:i|you|he|she|we|they|it|please)\b|^where\b/;

const places = ({ found }: Heard): Offer[] => {
  const sides = new Places(found, new Uint8Array(found.tokens.length));
  const offers: Offer[] = [];
  const offer = (at: Stretch, sort: string): void => {
    if (offers.some((each) => overlaps(each, at))) return;
    const where = sides.words(at);
    if (SPOKEN.test(where)) return;
    offers.push({ ...at, field: "where", change: { change: "fields", to: { where } }, is: where, sort });
  };
  for (const ref of found.components) {
    const at = sides.ofMention(ref);
    if (at !== undefined) offer(at, "of-thing");
  }
  const tokens = placeTokensOf(found);
  for (let from = 0; from < found.tokens.length; from++) {
    const phrase = sides.within({ from, to: found.tokens.length }, offers);
    if (phrase === undefined) break;
    offer(phrase, "phrase");
    from = Math.max(from, phrase.to - 1);
  }
  for (const from of tokens) offer({ from, to: from + 1 }, "word");
  return offers;
};

const OWNERS: ReadonlySet<string> = new Set(["the", "a", "my", "our", "his", "her", "some", "that"]);

const DENIALS: ReadonlySet<string> = new Set(["not", "wasnt", "isnt", "werent", "never"]);

const doer = (at: Stretch, by: string | null): Offer => {
  const is = by === null ? "me" : "other";
  return { from: at.from, to: at.to, field: "who", change: { change: "done-by", to: by }, is, sort: is };
};

/** Whoever is named as one who works, and is not denied: "not the yard, it was dave next door". */
const doers = ({ words }: Heard): Offer[] => {
  const instead = insteadOf(words.filter((word) => /\w/.test(word)).join(" "));
  const named = words.flatMap((word, at): Offer[] => {
    const isSelf = SELF.has(word) || (word === "us" && ["was", "by"].includes(words[at - 1] ?? ""));
    if (isSelf) return [doer({ from: at, to: at + 1 }, null)];
    if (instead === undefined && isGivenName(word) && !DENIALS.has(words[at - 1] ?? ""))
      return [doer({ from: at, to: at + 1 }, capital(word))];
    if (!PEOPLE.has(word)) return [];
    const owner = words.slice(Math.max(0, at - 3), at).findIndex((each) => OWNERS.has(each));
    const alone = words[at - 1] === "in" && at >= 2 ? at - 2 : at;
    const from = owner < 0 ? alone : Math.max(0, at - 3) + owner;
    const denied = DENIALS.has(words[from - 1] ?? "");
    return denied ? [] : [doer({ from, to: at + 1 }, words.slice(from, at + 1).join(" "))];
  });
  const size = instead?.split(" ").length ?? 0;
  return instead === undefined || named.some(({ is }) => is === "other")
    ? named
    : [...named, doer({ from: words.length - size, to: words.length }, instead)];
};

const outcomes = ({ found }: Heard): Offer[] =>
  found.verdicts.map(
    ({ from, to, value: { outcome } }): Offer => ({
      from,
      to,
      field: "outcome",
      change: { change: "fields", to: { outcome } },
      is: outcome,
      sort: outcome,
    }),
  );

/** What a message names whatever record it is about, as it stands before and behind days and sums. */
type Alike = { readonly before: readonly Offer[]; readonly behind: readonly Offer[] };

const alike = (heard: Heard): Alike => ({
  before: [things, works].flatMap((each) => each(heard)),
  behind: [stuffs, places, doers, outcomes].flatMap((each) => each(heard)),
});

const heardIn = new WeakMap<Scan, Heard & Alike>();

/** A message is held against many records: what it names for all of them is found once. */
const heard = (found: Scan): Heard & Alike => {
  const known = heardIn.get(found);
  if (known !== undefined) return known;
  const words = found.tokens.map(({ norm }) => norm);
  const whole = { found, words, ...alike({ found, words }) };
  heardIn.set(found, whole);
  return whole;
};

/** All values that a message names, as what they would put right in a record. */
export const offersIn = (text: string, moment: Moment, fields: RecordFields): readonly Offer[] => {
  const { found, words, before, behind } = heard(scan(text, moment));
  const said: Said = { found, words, fields, moment };
  const known = [...before, ...dates(said), ...sums(said), ...behind];
  const unknown = unknownStuffsIn(found.tokens, known).map((at) =>
    stuff(at, words.slice(at.from, at.to).join(" "), "unknown"),
  );
  return [...known, ...unknown];
};

/** What a record says in the field of an offer, in the offer's terms; "" for nothing. */
export const keptAs = (field: OfferField, fields: RecordFields): readonly string[] => {
  switch (field) {
    case "component":
      return [fields.component];
    case "action":
      return fields.action === null ? [] : [fields.action];
    case "date":
      return fields.date === null ? [] : [bareDate(fields.date)];
    case "cost":
      return fields.cost === null ? [] : [String(fields.cost)];
    case "material":
      return fields.materials;
    case "where":
      return fields.where === null ? [] : [fields.where];
    case "who":
      return [];
    case "outcome":
      return fields.outcome === null ? [] : [fields.outcome];
  }
};
