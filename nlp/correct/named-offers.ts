import { capital } from "../../shared/capital.ts";
import type { Action, ComponentId } from "../../shared/vocabulary.ts";
import { deedsIn } from "../ask/deeds.ts";
import { mentionsIn } from "../ask/names.ts";
import people from "../lexicon/data/people.json" with { type: "json" };
import { isGivenName } from "../lexicon/lexicon.ts";
import { singular } from "../lexicon/tokens.ts";
import { placeTokensOf } from "../read/ground.ts";
import type { Scan, Stretch } from "../read/scan.ts";
import { Places } from "../read/where.ts";
import { isContainer } from "./containers.ts";
import { type Heard, type Offer, overlaps, stuff } from "./offer.ts";
import { insteadOf } from "./person.ts";
import { takesBackAt } from "./takes-back.ts";

const PEOPLE: ReadonlySet<string> = new Set(people.who);
const SELF: ReadonlySet<string> = new Set(["myself", "me", "ourselves"]);

const things = ({ found, words }: Heard): Offer[] => {
  /** "The black tin" names no tank. */
  const isTin = (to: number): boolean => isContainer(words[to] ?? "");
  const all = found.components.filter(({ to, weak }) => !(weak && isTin(to)));
  const mentions = mentionsIn(words);
  const inSingular = all.some(({ weak }) => weak) ? mentionsIn(words.map(singular)) : [];
  const sensesAt = (at: Stretch): readonly ComponentId[] =>
    inSingular.find((mention) => overlaps(mention, at))?.named.map(({ component }) => component) ?? [];
  const named = all.map(
    ({ from, to, id, weak }): Offer => ({
      from,
      to,
      field: "component",
      change: { change: "fields", to: { component: id } },
      is: id,
      sort: weak ? "weak" : "named",
      ...(weak ? { senses: sensesAt({ from, to }) } : {}),
    }),
  );
  /** "Lithium grease" names no battery. */
  const stuffs = found.materials.filter((each) => each.to - each.from > 1 && each.group !== "part");
  const nicknamed = mentions.flatMap((mention): Offer[] =>
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
            senses: mention.named.map((each) => each.component),
          }),
        ),
  );
  return [...named, ...nicknamed];
};

/** Words that may stand between: "charged me all of 64". */
const TO_THE_SUM = 4;

/** "He charged £64": money asked for, and no battery. */
const isOfMoney = (to: number, actions: readonly Action[], { found }: Heard): boolean =>
  actions[0] === "charge" &&
  found.amounts.some(({ from, what }) => what === "money" && from >= to && from - to <= TO_THE_SUM);

const works = (heard: Heard): Offer[] =>
  deedsIn(heard.words)
    .filter(({ from }) => !takesBackAt(heard.words, from))
    .filter(({ to, actions }) => !isOfMoney(to, actions, heard))
    .flatMap(({ from, to, actions }) =>
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

const stuffs = ({ found }: Heard): Offer[] =>
  found.materials.map((material) => stuff(material, material.name, material.group ?? "other"));

/** "Would I please get it right": no place. */
const SPOKEN = /\b(?:i|you|he|she|we|they|it|please)\b|^where\b/;

/** Neighbours among places in a text, each run as one: "curbside rear". */
const runsOf = (tokens: readonly number[]): readonly Stretch[] => {
  const runs: { from: number; to: number }[] = [];
  for (const at of tokens.toSorted((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last?.to === at) last.to = at + 1;
    else runs.push({ from: at, to: at + 1 });
  }
  return runs;
};

const places = ({ found }: Heard): Offer[] => {
  const sides = new Places(found, new Uint8Array(found.tokens.length));
  const offers: Offer[] = [];
  const offer = (at: Stretch, sort: string): void => {
    if (offers.some((each) => overlaps(each, at))) return;
    const where = sides.words(at);
    if (SPOKEN.test(where) || found.tokens[at.from - 1]?.norm === "nowhere") return;
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
  for (const run of runsOf([...tokens])) offer(run, "word");
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

/** "Nah, it was autumn": no word on how it went. */
const ONLY_NO: ReadonlySet<string> = new Set(["nah", "nope", "nup"]);

const outcomes = ({ found, words }: Heard): Offer[] =>
  found.verdicts
    .filter(({ from, to }) => !(from === 0 && to === 1 && words.length > 1 && ONLY_NO.has(words[0] ?? "")))
    .map(
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
export const heard = (found: Scan): Heard & Alike => {
  const known = heardIn.get(found);
  if (known !== undefined) return known;
  const words = found.tokens.map(({ norm }) => norm);
  const whole = { found, words, ...alike({ found, words }) };
  heardIn.set(found, whole);
  return whole;
};
