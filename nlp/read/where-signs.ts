import type { Build } from "./build.ts";
import { wordAt } from "./ground.ts";
import { loosePlaces, placesBeforeName, placesByNoun } from "./loose-places.ts";
import { type Made, mainDeed } from "./made.ts";
import type { Scan, Stretch } from "./scan.ts";
import { sizeOf } from "./sizes.ts";
import { startingIn } from "./windows.ts";
import { DETERMINERS, PREPOSITIONS } from "./words.ts";

/** A phrase of place that may tell where a record's thing is; or that none does. */
export type WhereChoice = { readonly at: Stretch | undefined; readonly ruled: boolean };

/** Words round the name and round the deed in which a place may be told. */
const ROUND_NAME = 10;
const ROUND_DEED = 16;
/** And in which words may do so that tell a place only there. */
const NAME_LOOSE = 5;
const DEED_LOOSE = 7;

const placeOf = (made: Made): number => mainDeed(made)?.at ?? made.span.from;
const overlaps = (one: Stretch, other: Stretch): boolean => one.from < other.to && other.from < one.to;

/** "In the floor of the slide", of a thing that only its description names: that is the thing, and no place. */
const isThing = (phrase: Stretch, { topic: { ref, component } }: Made["told"], { tokens }: Scan): boolean => {
  const named = component.split("-");
  const said = tokens.slice(phrase.from, phrase.to).map(({ norm }) => norm);
  return (
    ref.from === ref.to &&
    named.every((word) => said.includes(word)) &&
    said.every((word) => named.includes(word) || PREPOSITIONS.has(word) || DETERMINERS.has(word))
  );
};

/** Where a record's thing may be: what the rules say first, then nowhere told, then every phrase of place near by. */
export const whereChoices = (made: Made, { places, scan }: Build): WhereChoice[] => {
  const { ref } = made.told.topic;
  const at = placeOf(made);
  const near = [
    ...places.phrasesIn({ from: Math.max(0, ref.from - ROUND_NAME), to: ref.to + ROUND_NAME }),
    ...places.phrasesIn({
      from: Math.max(0, at - ROUND_DEED),
      to: Math.min(scan.tokens.length, at + ROUND_DEED),
    }),
  ];
  const modifier = ref.to - ref.from > 1 ? [{ from: ref.from, to: ref.to - 1 }] : [];
  const loose = [
    ...loosePlaces(scan, { from: Math.max(0, ref.from - NAME_LOOSE), to: ref.to + NAME_LOOSE }),
    ...loosePlaces(scan, { from: Math.max(0, at - NAME_LOOSE), to: at + DEED_LOOSE }),
    ...[
      ...placesByNoun(scan, { from: ref.from - ROUND_NAME, to: ref.to + ROUND_NAME }),
      ...placesByNoun(scan, { from: at - ROUND_NAME, to: at + ROUND_DEED }),
    ].filter((phrase) => !overlaps(phrase, ref)),
    ...placesBeforeName(scan, ref),
  ];
  const told = made.where === undefined || isThing(made.where, made.told, scan) ? undefined : made.where;
  const known: Stretch[] = told === undefined ? [] : [told];
  for (const phrase of [...near, ...loose, ...modifier])
    if (!isThing(phrase, made.told, scan) && !known.some((each) => overlaps(each, phrase)))
      known.push(phrase);
  const [ruled, ...others] = [...(told === undefined ? [undefined] : []), ...known];
  return [
    { at: ruled, ruled: true },
    ...(ruled === undefined ? [] : [{ at: undefined, ruled: false }]),
    ...others.map((each) => ({ at: each, ruled: false })),
  ];
};

/** Where a phrase stands seen from another stretch. */
const standing = (phrase: Stretch, other: Stretch): string =>
  overlaps(phrase, other)
    ? "inside"
    : phrase.to <= other.from
      ? `before ${sizeOf(other.from - phrase.to)}`
      : `after ${sizeOf(phrase.from - other.to)}`;

/** The signs, as names, that tell whether a phrase says where a record's thing is. */
export const whereSigns = (
  made: Made,
  choice: WhereChoice,
  choices: readonly WhereChoice[],
  build: Build,
): string[] => {
  const { scan, index, deeds } = build;
  const { ref, component } = made.told.topic;
  const place = placeOf(made);
  const ruled = `ruled=${String(choice.ruled)}`;
  const phrase = choice.at;
  if (phrase === undefined)
    return [
      "none",
      `none ${ruled}`,
      `none component=${component}`,
      `none kind=${made.kind}`,
      `none choices=${sizeOf(choices.length)} ${ruled}`,
      `none weak=${String(ref.weak)} ${ruled}`,
      `none before=${wordAt(scan, ref.from - 1)}`,
      ...choices.flatMap(({ at }) =>
        at === undefined
          ? []
          : [`none though=${standing(at, ref)} ${String(index[at.from] === index[ref.from])}`],
      ),
    ];
  const named = standing(phrase, ref);
  const side = phrase.from < place ? "before" : "after";
  const [left, right] = [Math.min(phrase.from, place), Math.max(phrase.from, place)];
  const here = `name=${String(index[phrase.from] === index[ref.from])} deed=${String(index[phrase.from] === index[place])}`;
  const others = startingIn(scan.components, phrase.from - 6, phrase.to + 2).filter(
    (each) => each.id !== component && (each.from === phrase.to || each.to === phrase.from),
  );
  const whose =
    others.length === 0 ? "free" : others.some((each) => each.from === phrase.to) ? "of next" : "of last";
  const between = startingIn(
    scan.components,
    Math.min(phrase.to, ref.to),
    Math.max(phrase.from, ref.from),
  ).filter((each) => each.id !== component && !each.weak).length;
  const done = startingIn(deeds, left, right).filter((deed) => deed.status === "done").length;
  const [first, last] = [wordAt(scan, phrase.from), wordAt(scan, phrase.to - 1)];
  const words = scan.tokens.slice(phrase.from, phrase.to).map(({ norm }) => norm);
  const inside = `inside=${String(phrase.from >= made.span.from && phrase.from < made.span.to)}`;
  return [
    "phrase",
    ruled,
    `${ruled} named=${named}`,
    `named=${named}`,
    `named=${named} ${here}`,
    `named=${named} whose=${whose}`,
    `named=${named} first=${first}`,
    `deed=${side} ${sizeOf(right - left)}`,
    `deed=${side} ${sizeOf(right - left)} ${here}`,
    `here ${here}`,
    `${here} whose=${whose}`,
    `${here} done=${sizeOf(done)}`,
    `${here} between=${sizeOf(between)}`,
    `between=${sizeOf(between)} done=${sizeOf(done)}`,
    `whose=${whose} ${ruled}`,
    `${inside} ${ruled}`,
    `${inside} ${here}`,
    `first=${first}`,
    `last=${last}`,
    `first=${first} last=${last}`,
    `last=${last} component=${component}`,
    `last=${last} ${ruled}`,
    `first=${first} ${ruled}`,
    `component=${component}`,
    `action=${made.action ?? "none"} first=${first}`,
    `left=${wordAt(scan, phrase.from - 1)}`,
    `left=${wordAt(scan, phrase.from - 1)} first=${first}`,
    `right=${wordAt(scan, phrase.to)}`,
    `size=${sizeOf(phrase.to - phrase.from)} ${ruled}`,
    `kind=${made.kind} ${here}`,
    ...words.map((word) => `word=${word}`),
  ];
};
