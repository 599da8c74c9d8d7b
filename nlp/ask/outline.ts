import type { Moment } from "../../shared/reading.ts";
import { type Stretch, scan } from "../read/scan.ts";
import { deedsIn } from "./deeds.ts";
import { mentionsIn } from "./names.ts";

/**
 * The words of a text with what it names put as one letter each: C a thing, S a system, D work, T a time, M stuff, $ money,
 * # a number. Marks are left out, but for question marks.
 */
export const outlineOf = (text: string, moment: Moment): string[] => {
  const found = scan(text, moment);
  const words = found.tokens.map(({ norm }) => norm);
  const sorts: (string | undefined)[] = words.map(() => undefined);
  const put = (refs: readonly Stretch[], sort: string): void => {
    for (const { from, to } of refs) {
      sorts.fill("", from, to);
      sorts[from] = sort;
    }
  };
  const mentions = mentionsIn(words);
  put(found.numbers, "#");
  put(found.materials, "M");
  put(
    mentions.filter(({ systems }) => systems.length > 0),
    "S",
  );
  put(deedsIn(words), "D");
  put(
    mentions.filter(({ named }) => named.length > 0),
    "C",
  );
  put(found.components, "C");
  put(
    found.amounts.filter(({ what }) => what === "money"),
    "$",
  );
  put(found.times, "T");
  return found.tokens.flatMap(({ norm, kind }, at) => {
    const sort = sorts[at];
    if (sort !== undefined) return sort === "" ? [] : [sort];
    return kind === "mark" && norm !== "?" ? [] : [norm];
  });
};

/** Runs of one to three words, as signs. */
export const runsOf = (name: string, words: readonly string[]): string[] => [
  ...words.map((word) => `${name}=${word}`),
  ...words.slice(1).map((word, at) => `${name}2=${words[at] ?? ""} ${word}`),
  ...words.slice(2).map((word, at) => `${name}3=${words[at] ?? ""} ${words[at + 1] ?? ""} ${word}`),
];
