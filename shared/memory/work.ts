import type { Action } from "../vocabulary.ts";
import { plainWords, shareAny, tellingStems } from "./words.ts";
import table from "./work.json" with { type: "json" };

const CURES: ReadonlySet<string> = new Set(table.cures);

/** Work that cures a trouble, as against care that is repeated whether or not anything is wrong. */
export const isCure = (action: Action | null): boolean => action !== null && CURES.has(action);

const PUTS_IN: ReadonlySet<string> = new Set(table.putsIn);

/** Work that puts a new thing in, where there was one and where there was none. */
export const putsIn = (action: Action | null): boolean => action !== null && PUTS_IN.has(action);

const phraseIn = (phrases: readonly string[]): ((text: string) => boolean) => {
  const plain = phrases.map((phrase) => ` ${plainWords(phrase).join(" ")} `);
  return (text) => {
    const words = ` ${plainWords(text).join(" ")} `;
    return plain.some((phrase) => words.includes(phrase));
  };
};

/** Whether the words say that a trouble is back or that work is done once more. */
export const tellsReturn = phraseIn(table.returned);

const TROUBLES = table.troubles.map(({ words, cures }) => ({
  stems: tellingStems(words.join(" ")),
  words: new Set(words),
  cures: new Set<string>(cures),
}));

/** Whether a trouble told in these words is one that such work was to cure: a leak for what was sealed. */
export const undoes = (trouble: string, action: Action | null): boolean =>
  action !== null &&
  TROUBLES.some(
    ({ stems, words, cures }) =>
      cures.has(action) &&
      (shareAny(stems, tellingStems(trouble)) || plainWords(trouble).some((word) => words.has(word))),
  );

/** Whether the words say that something broke. */
export const tellsBreaking = phraseIn(table.broke);

/** Whether the words say that something works no more. */
export const tellsDead = phraseIn(table.dead);

const KNOWN = new Set(table.known);
const TOWARDS = new Set(table.towards);
/** As many words make the name of a stuff: "the stainless hose clamp". */
const NAME = 3;

/** Words for things spoken of as known and not as what work is done with or at: "the tape soaked", not "on the tape". */
export const knownThings = (text: string): readonly string[] => {
  const words = plainWords(text);
  return words.flatMap((word, at) =>
    KNOWN.has(word) && !TOWARDS.has(words[at - 1] ?? "") ? words.slice(at + 1, at + 1 + NAME) : [],
  );
};

/** Whether the words say how earlier work does by now. */
export const tellsStill = phraseIn(table.still);

/** "Got to get up there", "must get round to it": nothing that is to be bought. */
const GETS_THERE = new RegExp(`\\b(?:${table.getting.join("|")}) (?:${table.there.join("|")})\\b`, "g");
const tellsBuyingPlainly = phraseIn(table.buying);

/** Whether the words say that something is to be bought. */
export const tellsBuying = (text: string): boolean =>
  tellsBuyingPlainly(plainWords(text).join(" ").replace(GETS_THERE, " "));

const NEEDING = table.needing.map((phrase) => ` ${phrase} `);
/** As many words may stand between: "need another couple of tubes of lap sealant". */
const NEEDED_WITHIN = 6;

/** Whether the words say that some of the stuff is to be got ("need two tubes of lap sealant"), and not to be used only. */
export const tellsNeedOf = (text: string, materials: readonly string[]): boolean => {
  const said = ` ${plainWords(text).join(" ")} `;
  const stuff = materials.map((material) => ` ${plainWords(material).join(" ")} `);
  return NEEDING.some((phrase) => {
    const at = said.indexOf(phrase);
    const after = at < 0 ? "" : said.slice(at + phrase.length - 1);
    return stuff.some((each) => {
      const between = after.includes(each)
        ? after.slice(0, after.indexOf(each)).trim().split(" ")
        : undefined;
      return between !== undefined && between.length <= NEEDED_WITHIN && !between.includes("to");
    });
  });
};

const GOT = phraseIn(table.got);
const NOT_GOT = phraseIn(table.notGot);

/** Whether the words say that something which was wanted is there now: "picked up the lap sealant". */
export const tellsGot = (text: string): boolean => GOT(text) && !NOT_GOT(text);

/** Whether the words say that it holds in part. */
export const tellsPartly = phraseIn(table.partly);

/** Whether the words speak of another thing than one told before ("the other side"). */
export const tellsOther = phraseIn(table.other);

/** Whether the words speak of a further thing beside one told before ("the other side too"). */
export const tellsAnother = phraseIn([...table.other, ...table.another]);

const isGeneral = (action: Action | null): boolean => action === "repair" || action === null;

/** Whether two accounts may be of one piece of work. */
export const sameAction = (one: Action | null, other: Action | null): boolean =>
  one === other || isGeneral(one) || isGeneral(other);
