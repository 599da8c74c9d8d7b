const LONGEST_PHRASE = 6;
const ALLOWED = 3;

const repeats = (words: readonly string[], at: number, size: number): number => {
  const same = (n: number): boolean =>
    words
      .slice(at, at + size)
      .every((word, i) => words[at + n * size + i]?.toLowerCase() === word.toLowerCase());
  let count = 1;
  while (at + (count + 1) * size <= words.length && same(count)) count++;
  return count;
};

/** Recognisers sometimes fall into saying a phrase over and over; more than three in a row become one. */
export const withoutLoops = (text: string): string => {
  const words = text.split(/\s+/).filter((word) => word !== "");
  const out: string[] = [];
  for (let at = 0; at < words.length; ) {
    const sizes = Array.from({ length: LONGEST_PHRASE }, (_, i) => i + 1);
    const size = sizes.find((n) => repeats(words, at, n) > ALLOWED);
    const count = size === undefined ? 1 : repeats(words, at, size);
    out.push(...words.slice(at, at + (size ?? 1)));
    at += count * (size ?? 1);
  }
  return out.join(" ");
};
