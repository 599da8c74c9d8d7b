import { remembered } from "../../shared/remembered.ts";
import { inflect } from "../lexicon/inflect.ts";
import { SPELLER } from "../lexicon/lexicon.ts";
import { written } from "../lexicon/spelling.ts";
import deeds from "./deeds.json" with { type: "json" };
import table from "./shorthand.json" with { type: "json" };

const CLIPPED: ReadonlyMap<string, string> = new Map(Object.entries(table.words));

const deedForms = (): readonly string[] =>
  (deeds.deeds as { readonly verbs: readonly string[] }[])
    .flatMap(({ verbs }) => verbs.filter((verb) => !verb.includes(" ")))
    .flatMap((verb) => inflect(verb).map(({ text }) => text));

const VERBS: ReadonlySet<string> = new Set(deedForms());
const ASKING: readonly string[] = table.asking;

/** The consonants of a word behind its first letter, a doubled letter once. */
const skeletonOf = (word: string): string =>
  `${word.slice(0, 1)}${word.slice(1).replace(/[aeiou]/g, "")}`.replace(/(.)\1/g, "$1");

const isWithin = (short: string, word: string): boolean => {
  let at = 0;
  for (const letter of word) if (letter === short[at]) at++;
  return at === short.length;
};

const SHORTEST = 3;

/** Only vowels left out of a word that questions use: "everythng", "whch". */
const vowelsBack = (word: string): string | undefined =>
  word.length < SHORTEST || ASKING.includes(word)
    ? undefined
    : ASKING.find(
        (each) =>
          each.length > word.length &&
          each.length - word.length <= 2 &&
          skeletonOf(each) === skeletonOf(word) &&
          isWithin(word, each),
      );

/** "Greasd" for "greased", "swapd" for "swapped". */
const edBack = (word: string): string | undefined => {
  const stem = /^(\w*[^aeioud\W])d$/.exec(word)?.[1];
  return stem === undefined || VERBS.has(word)
    ? undefined
    : [`${stem}ed`, `${stem}${stem.slice(-1)}ed`].find((long) => VERBS.has(long));
};

/** "Shoppin" for "shopping". */
const ingBack = (word: string): string | undefined =>
  word.endsWith("in") && (VERBS.has(`${word}g`) || ASKING.includes(`${word}g`)) ? `${word}g` : undefined;

const longFor = (word: string): string | undefined =>
  CLIPPED.get(word) ?? ingBack(word) ?? edBack(word) ?? vowelsBack(word);

/** A clipped or mistyped word of the trade; names with a capital are left alone. */
const tradeWord = (word: string): string => (/^\p{Lu}/u.test(word) ? word : written(word, SPELLER));

const TO_VERB = new RegExp(`\\b2 (?=(?:${table.verbs.join("|")})\\b)`, "gi");
const NUMBER_OF = /\bno\.? of(?= (?!course\b)|$)/gi;
const MONEY = /(^|\s)\$+(?=\s|$)/g;

const spelled = (text: string): string =>
  text
    .replace(TO_VERB, "to ")
    .replace(NUMBER_OF, "number of")
    .replace(MONEY, "$1money")
    .replace(/(?<![\p{L}\p{N}'’.$£€#/-])[a-z][a-z0-9]*(?![\p{L}\p{N}'’/-])/giu, (word) =>
      /^[A-Z]+$/.test(word) ? word : (longFor(word.toLowerCase()) ?? tradeWord(word)),
    );

/** As many texts as are kept as they were written out. */
const KEPT = 64;

/** The text with the clipped and mistyped words of text messages written out; the rest of it, figures and marks too, as it was. */
export const spelledOut: (text: string) => string = remembered(spelled, KEPT);
