import type { ComponentRef } from "../lexicon/components.ts";
import { DROP, PLACES } from "../lexicon/lexicon.ts";
import { plain } from "../lexicon/tokens.ts";
import { placeTokensOf } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import { DETERMINERS, listed } from "./words.ts";

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
  const named = ref.id.split("-");
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
  while (to < ref.to - 1 && placeTokens.has(to) && !named.includes(word(scan, to))) to++;
  const said = scan.tokens.slice(from, to).map((token) => token.norm);
  const says = !FAINT.has(said.join(" ")) && said.some((each) => !FAINT.has(each) && !named.includes(each));
  return from < to && says ? { from, to } : undefined;
};

const NEARBY = listed("whereNearby");
const NP_MOST = 6;
/** No places on their own. */
const FAINT = PLACES.faint;
const STOP = listed("whereStop");

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
    if (STOP.has(token.norm) || seen > 0 || token.norm === "with") break;
    if (!PLACES.always.has(preposition) || to - at > 2) break;
  }
  return seen > 0 ? { from: at, to: seen } : undefined;
};

const LANDMARKS = listed("whereLandmarks");
const AT = listed("whereAt");
const ARTICLES = new Set(["the", "my", "our", "his", "her"]);
const MEETS = new Set(
  "goes go comes come meets meet joins join enters exits passes bolts attaches connects mounts screws plugs sits runs".split(
    " ",
  ),
);
const PARTICLES = listed("whereParticles");

const SIDES = new Set(["side", "hand", "corner", "s", "-"]);

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
    const before = premodifiers(this.#scan, ref, this.#tokens, this.#dead);
    const after = this.#at(ref.to) ?? this.#nounAfter(ref.to);
    if (before === undefined || after === undefined) return before ?? after;
    return { from: before.from, to: after.to };
  }

  /** "the tap in the kitchenette": any noun after a preposition and article right behind the thing. */
  #nounAfter(at: number): Stretch | undefined {
    const words = [0, 1, 2, 3].map((ahead) => word(this.#scan, at + ahead));
    if (!NEARBY.has(words[0] ?? "") || !["the", "my", "our", "this", "that"].includes(words[1] ?? ""))
      return undefined;
    const noun = this.#scan.tokens[at + 2];
    return noun?.kind === "word" && !PLACES.notPlaces.has(noun.norm) ? { from: at, to: at + 3 } : undefined;
  }

  #at(at: number): Stretch | undefined {
    return this.#dead[at] === 1 ? undefined : placePhrase(this.#scan, at, this.#tokens);
  }

  /** Every phrase of place that starts in a stretch, in order and apart from each other. */
  phrasesIn({ from, to }: Stretch): Stretch[] {
    const found: Stretch[] = [];
    for (let at = from; at < to; at++) {
      const phrase = this.#at(at) ?? this.#landmark(at) ?? this.#whereItGoes(at) ?? this.#bare(at);
      if (phrase === undefined) continue;
      found.push(phrase);
      at = phrase.to - 1;
    }
    return found;
  }

  /** "Front left", "off side": words of place alone. */
  #bare(at: number): Stretch | undefined {
    let to = at;
    while (this.#dead[to] !== 1 && (this.#tokens.has(to) || (to > at && SIDES.has(word(this.#scan, to)))))
      to++;
    const says = this.#scan.tokens.slice(at, to).some(({ norm }) => !FAINT.has(norm) && !SIDES.has(norm));
    return says ? { from: at, to } : undefined;
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
      const found = this.#landmark(at) ?? this.#whereItGoes(at);
      if (found !== undefined && !mentions.some((each) => each.from < found.to && found.from < each.to))
        return found;
    }
    for (let at = from; at < to; at++) {
      if (this.#dead[at] === 1 || !this.#tokens.has(at) || FAINT.has(word(this.#scan, at))) continue;
      const sideTo = word(this.#scan, at + 1) === "side" || this.#tokens.has(at + 1) ? at + 2 : at + 1;
      if (sideTo - at > 1) return { from: at, to: sideTo };
    }
    return undefined;
  }

  /** "By the drain", "behind the big drawer": a landmark on the rig after a preposition. */
  #landmark(at: number): Stretch | undefined {
    const opener = word(this.#scan, at);
    if (this.#dead[at] === 1 || !(LANDMARKS.has(opener) || AT.has(opener))) return undefined;
    const the = ["to", "of"].includes(word(this.#scan, at + 1)) ? at + 2 : at + 1;
    if (!ARTICLES.has(word(this.#scan, the))) return undefined;
    for (let noun = the + 1; noun <= the + 2; noun++) {
      const token = this.#scan.tokens[noun];
      if (token?.kind !== "word" || PLACES.notPlaces.has(token.norm)) return undefined;
      if (PLACES.spots.has(token.norm) || PLACES.spots.has(token.stem)) return { from: at, to: noun + 1 };
    }
    return undefined;
  }

  /** "Where the pipe goes in". */
  #whereItGoes(at: number): Stretch | undefined {
    if (word(this.#scan, at) !== "where" || this.#dead[at] === 1) return undefined;
    for (let verb = at + 2; verb <= at + 4; verb++) {
      if (!MEETS.has(word(this.#scan, verb))) continue;
      return { from: at, to: PARTICLES.has(word(this.#scan, verb + 1)) ? verb + 2 : verb + 1 };
    }
    return undefined;
  }

  words(stretch: Stretch): string {
    return plain(wordsOf(this.#scan, stretch));
  }
}
