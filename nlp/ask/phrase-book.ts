/** Words `from` to `to` (exclusive) of a text, and what they mean. */
export type Phrase<T> = { readonly from: number; readonly to: number; readonly sense: T };

const firstOf = (key: string): string => key.split(" ", 1)[0] ?? "";

/** Phrases of plain words, each with what it means. */
export class PhraseBook<T> {
  readonly #senses: ReadonlyMap<string, T>;
  /** How many words the longest phrase has that begins with a word. */
  readonly #longest = new Map<string, number>();

  /** Keys are plain words with one space between. */
  constructor(senses: ReadonlyMap<string, T>) {
    this.#senses = senses;
    for (const key of senses.keys()) {
      const first = firstOf(key);
      this.#longest.set(first, Math.max(key.split(" ").length, this.#longest.get(first) ?? 0));
    }
  }

  #at(
    words: readonly string[],
    from: number,
    holds: (key: string, from: number) => boolean,
  ): Phrase<T> | undefined {
    const most = Math.min(this.#longest.get(words[from] ?? "") ?? 0, words.length - from);
    for (let length = most; length > 0; length--) {
      const key = words.slice(from, from + length).join(" ");
      const sense = this.#senses.get(key);
      if (sense !== undefined && holds(key, from)) return { sense, from, to: from + length };
    }
    return undefined;
  }

  /** The phrases of a text that hold where they stand, left to right, the longest at each place, none overlapping. */
  all(
    words: readonly string[],
    holds: (key: string, from: number) => boolean = () => true,
  ): readonly Phrase<T>[] {
    const found: Phrase<T>[] = [];
    for (let at = 0; at < words.length; at++) {
      const phrase = this.#at(words, at, holds);
      if (phrase === undefined) continue;
      found.push(phrase);
      at = phrase.to - 1;
    }
    return found;
  }
}
