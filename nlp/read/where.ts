import type { ComponentRef } from "../lexicon/components.ts";
import { DROP, PLACES } from "../lexicon/lexicon.ts";
import { plain } from "../lexicon/tokens.ts";
import { placeTokensOf } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import { DETERMINERS } from "./words.ts";

const word = (scan: Scan, at: number): string => scan.tokens[at]?.norm ?? "";

/** The speaker's own words of a stretch, in lower case. */
export const wordsOf = (scan: Scan, { from, to }: Stretch): string =>
  scan.text
    .slice(scan.tokens[from]?.start ?? 0, scan.tokens[to - 1]?.end ?? 0)
    .replace(/\s+/g, " ")
    .trim();

const premodifiers = (
  scan: Scan,
  ref: ComponentRef,
  placeTokens: ReadonlySet<number>,
  dead: Uint8Array,
): Stretch | undefined => {
  let from = ref.from;
  while (
    from > 0 &&
    dead[from - 1] !== 1 &&
    (placeTokens.has(from - 1) ||
      word(scan, from - 1) === "-" ||
      (["side", "hand", "corner", "s"].includes(word(scan, from - 1)) && placeTokens.has(from - 2)))
  )
    from--;
  let to = ref.from;
  while (to < ref.to - 1 && ROOMS.has(word(scan, to))) to++;
  return from < to ? { from, to } : undefined;
};

const NEARBY = new Set([
  "in",
  "at",
  "by",
  "beside",
  "under",
  "over",
  "behind",
  "near",
  "above",
  "below",
  "outside",
  "inside",
]);
const SUBORDINATE = new Set([
  "morning",
  "afternoon",
  "summer",
  "winter",
  "spring",
  "fall",
  "weekend",
  "end",
  "way",
  "time",
  "moment",
  "start",
  "last",
  "next",
  "first",
]);
const ROOMS: ReadonlySet<string> = new Set(PLACES.rooms);
const NP_MOST = 6;
/** No places on their own. */
const FAINT = new Set(["first", "second", "third", "last", "other", "main", "both", "forward", "up"]);
const STOP = new Set([
  "and",
  "so",
  "but",
  "it",
  "i",
  "we",
  "was",
  "is",
  "that",
  "then",
  "had",
  "which",
  "a",
  "has",
]);

/** The noun phrase of a place after a preposition, or nothing when it is no place. */
const placePhrase = (scan: Scan, at: number, placeTokens: ReadonlySet<number>): Stretch | undefined => {
  const preposition = word(scan, at);
  if (!PLACES.always.has(preposition) && !["in", "on", "at", "along", "of"].includes(preposition))
    return undefined;
  let to = at + 1;
  if (["to", "of"].includes(word(scan, to))) to++;
  let seen = 0;
  for (; to < scan.tokens.length && to - at <= NP_MOST; to++) {
    const token = scan.tokens[to];
    if (token === undefined || (token.kind === "mark" && token.norm !== "-")) break;
    if (
      placeTokens.has(to) ||
      PLACES.things.has(token.norm) ||
      PLACES.things.has(token.stem) ||
      token.norm === "side"
    ) {
      if (!FAINT.has(token.norm)) seen = to + 1;
      continue;
    }
    if (
      DETERMINERS.has(token.norm) ||
      token.norm === "number" ||
      token.norm === "of" ||
      DROP.has(token.norm) ||
      token.norm === "-"
    )
      continue;
    if (STOP.has(token.norm) || seen > 0) break;
    if (!PLACES.always.has(preposition) || to - at > 2) break;
  }
  return seen > 0 ? { from: at, to: seen } : undefined;
};

export class Places {
  readonly #scan: Scan;
  readonly #dead: Uint8Array;
  readonly #tokens: ReadonlySet<number>;

  constructor(scan: Scan, dead: Uint8Array) {
    this.#scan = scan;
    this.#dead = dead;
    this.#tokens = placeTokensOf(scan);
  }

  /** Where a mentioned thing is: words before it ("front left"), else a phrase after it ("over the bed"). */
  ofMention(ref: ComponentRef): Stretch | undefined {
    return (
      premodifiers(this.#scan, ref, this.#tokens, this.#dead) ?? this.#at(ref.to) ?? this.#nounAfter(ref.to)
    );
  }

  /** "the tap in the kitchenette": any noun after a preposition and article right behind the thing. */
  #nounAfter(at: number): Stretch | undefined {
    const words = [0, 1, 2, 3].map((ahead) => word(this.#scan, at + ahead));
    if (!NEARBY.has(words[0] ?? "") || !["the", "my", "our", "this", "that"].includes(words[1] ?? ""))
      return undefined;
    const noun = this.#scan.tokens[at + 2];
    return noun?.kind === "word" && !SUBORDINATE.has(noun.norm) ? { from: at, to: at + 3 } : undefined;
  }

  #at(at: number): Stretch | undefined {
    return this.#dead[at] === 1 ? undefined : placePhrase(this.#scan, at, this.#tokens);
  }

  /** The first phrase of place in a stretch that does not name the thing itself. */
  within({ from, to }: Stretch, mentions: readonly Stretch[]): Stretch | undefined {
    for (let at = from; at < to; at++) {
      const found = this.#at(at);
      if (
        found !== undefined &&
        found.to <= to &&
        !mentions.some((each) => each.from < found.to && found.from < each.to)
      )
        return found;
    }
    for (let at = from; at < to; at++) {
      if (this.#dead[at] === 1 || !this.#tokens.has(at)) continue;
      const sideTo = word(this.#scan, at + 1) === "side" || this.#tokens.has(at + 1) ? at + 2 : at + 1;
      if (sideTo - at > 1) return { from: at, to: sideTo };
    }
    return undefined;
  }

  words(stretch: Stretch): string {
    return plain(wordsOf(this.#scan, stretch));
  }
}
