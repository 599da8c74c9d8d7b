import { beginsLine, endsSentence } from "./clause-breaks.ts";
import type { Deed } from "./deed.ts";
import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import { startingIn } from "./windows.ts";
import { AUXILIARIES, listed, SUBJECTS } from "./words.ts";

const PARTING = listed("listedWantsParting");
const LEADING = listed("listedWantsLeading");
const SPOILS = listed("listedWantsSpoils");
const HEADING = listed("listedWantsHeading");
const NO_HEADING = listed("listedWantsNoHeading");

/** As many words as one item of a list has, and a whole list, and what stands over it. */
const LONGEST_ITEM = 9;
const LONGEST_LIST = 80;
const LONGEST_HEADING = 5;
const MOST_MARKS = 3;

const isMark = (scan: Scan, at: number): boolean => scan.tokens[at]?.kind === "mark";

const BULLETS: ReadonlySet<string> = new Set(["-", "–", "•", "*"]);

/** A new line, or a dash that stands alone. */
const opensLine = (scan: Scan, at: number): boolean => {
  const [before, token] = [scan.tokens[at - 1], scan.tokens[at]];
  const isApart = before !== undefined && token !== undefined && before.end < token.start;
  return beginsLine(scan, at) || (isApart && BULLETS.has(token.norm));
};
const parts = (scan: Scan, at: number): boolean => PARTING.has(wordAt(scan, at)) || opensLine(scan, at);

/** Past what leads to the name of a thing: "two of the new". */
const nameFrom = (scan: Scan, from: number, to: number): number => {
  let at = from;
  while (at < to && (LEADING.has(wordAt(scan, at)) || scan.tokens[at]?.kind === "number" || isMark(scan, at)))
    at++;
  return at;
};

/** The items of a list from a place on, up to the end of the sentence or to where something else is told. */
const itemsFrom = (scan: Scan, from: number, deeds: readonly Deed[]): Stretch[] => {
  const items: Stretch[] = [];
  const isTrouble = ({ from: first, to }: Stretch): boolean => {
    const [thing] = startingIn(scan.components, first, to);
    if (thing === undefined || isMark(scan, thing.to)) return false;
    const behind = Math.min(to, thing.to + 2);
    return (
      startingIn(scan.faults, thing.to, behind).length + startingIn(scan.verdicts, thing.to, behind).length >
      0
    );
  };
  const tells = ({ from: first, to }: Stretch): boolean =>
    isTrouble({ from: first, to }) ||
    startingIn(deeds, first, to).some(({ status }) => status !== "plan") ||
    scan.tokens
      .slice(first, to)
      .some(({ norm }) => AUXILIARIES.has(norm) || SUBJECTS.has(norm) || SPOILS.has(norm));
  const most = Math.min(scan.tokens.length, from + LONGEST_LIST);
  let start = from;
  for (let at = from; at <= most; at++) {
    const ends = at === most || (endsSentence(scan.tokens[at]) && !PARTING.has(wordAt(scan, at)));
    if (!ends && !parts(scan, at)) continue;
    const item = { from: nameFrom(scan, start, at), to: at };
    if (item.to > item.from) {
      if (item.to - item.from > LONGEST_ITEM || tells(item)) break;
      items.push(item);
    }
    if (ends) break;
    start = PARTING.has(wordAt(scan, at)) ? at + 1 : at;
  }
  return items;
};

const namingThings = (scan: Scan, items: readonly Stretch[], deeds: readonly Deed[]): readonly Stretch[] =>
  items.filter(
    ({ from, to }) =>
      startingIn(scan.components, from, to).length > 0 && startingIn(deeds, from, to).length === 0,
  );

/** The further things of a list of what is wanted, behind the first: "fuses, a cartridge for the water filter and a new sewer cap". */
export const alsoListed = (scan: Scan, after: number, deeds: readonly Deed[]): readonly Stretch[] => {
  for (let at = after; at <= after + LONGEST_ITEM; at++) {
    if (parts(scan, at)) return namingThings(scan, itemsFrom(scan, at, deeds), deeds);
    if (endsSentence(scan.tokens[at])) return [];
  }
  return [];
};

const ENDS_HEADING: ReadonlySet<string> = new Set([":", "-", "–", "!"]);

/** "To get", "parts list", and not "nothing on the list"; before a mere cry nothing but such words. */
const isHeading = (words: readonly string[], cried: boolean): boolean =>
  words.length <= LONGEST_HEADING &&
  !words.some((word) => NO_HEADING.has(word)) &&
  words.some((word) => HEADING.has(word)) &&
  (!cried || words.every((word) => HEADING.has(word)));

/** What stands under a heading: "to get: a fuse, tire gauge", "shopping list - fuses, marker bulb". */
export const listedUnder = (scan: Scan, deeds: readonly Deed[]): readonly Stretch[] =>
  scan.tokens.flatMap((token, at): readonly Stretch[] => {
    if (!ENDS_HEADING.has(token.norm) || ENDS_HEADING.has(wordAt(scan, at + 1))) return [];
    let to = at;
    while (at - to < MOST_MARKS && isMark(scan, to - 1)) to--;
    let from = to;
    while (from > 0 && to - from <= LONGEST_HEADING && !isMark(scan, from - 1)) from--;
    const heading = scan.tokens.slice(from, to).map(({ norm }) => norm);
    return isHeading(heading, token.norm === "!")
      ? namingThings(scan, itemsFrom(scan, at + 1, deeds), deeds)
      : [];
  });
