import { stemOf } from "../../shared/memory/words.ts";

/** Letters that are looked at together. */
const TOGETHER = 4;

const gramsOf = (word: string): string[] => {
  const whole = `^${word}$`;
  return Array.from({ length: Math.max(0, whole.length - TOGETHER + 1) }, (_, at) =>
    whole.slice(at, at + TOGETHER),
  );
};

/** Words cut down and cut up, as signs: so that forms of a word, and slips of the thumb, are met as what they are. */
export const wordSigns = (words: readonly string[]): string[] => [
  ...words.map((word) => `stem=${stemOf(word)}`),
  ...words.flatMap(gramsOf).map((gram) => `part=${gram}`),
];
