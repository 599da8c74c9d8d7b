import type { ComponentRef } from "../lexicon/components.ts";
import { PLACE_INDEX } from "../lexicon/lexicon.ts";
import type { Amount, NumberRef } from "./amount.ts";
import type { Deed } from "./deed.ts";
import { priceOf } from "./prices.ts";
import type { Scan, Stretch } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";
import { DETERMINERS, listed, NEGATIVES } from "./words.ts";

/** What is left of a note once its speaker's own corrections are applied. */
export type Corrected = {
  /** 1 for each token that was taken back. */
  readonly dead: Uint8Array;
  readonly components: readonly ComponentRef[];
  readonly amounts: readonly Amount[];
};

type Mention = Stretch & {
  readonly type: "component" | "material" | "money" | "use" | "time" | "place" | "deed" | "number";
  readonly index: number;
  /** What use is counted in: distance is put right by distance, time by time. */
  readonly counted?: string;
};

const DISTANCE = new Set(["miles", "km"]);
const CALENDAR = new Set(["days", "weeks", "months", "years", "seasons"]);
const countedIn = (what: string): string =>
  DISTANCE.has(what) ? "distance" : CALENDAR.has(what) ? "time" : what;

const REACH = 11;
/** Cues that correct only when the same sort of thing stands right before and right after. */
const FAINT = listed("correctionsFaint");

const mentionsOf = (scan: Scan, deeds: readonly Deed[]): Mention[] => {
  const of = (type: Mention["type"], refs: readonly Stretch[]): Mention[] =>
    refs.map(({ from, to }, index) => ({ type, from, to, index }));
  const amounts = scan.amounts.map(
    (amount, index): Mention => ({
      type: amount.what === "money" ? "money" : "use",
      from: amount.from,
      to: amount.to,
      index,
      counted: countedIn(amount.what),
    }),
  );
  const taken = new Set(scan.amounts.map((amount) => amount.from));
  const numbers = of("number", scan.numbers).filter(
    (number) =>
      !taken.has(number.from) && !(scan.tokens[number.from]?.norm === "one" && number.to - number.from === 1),
  );
  const all = [
    ...of("component", scan.components),
    ...of("time", scan.times),
    ...amounts,
    ...of("material", scan.materials),
    ...of("place", PLACE_INDEX.all(scan.tokens, false)),
    ...of(
      "deed",
      deeds.map((deed) => ({ from: deed.at, to: deed.to })),
    ),
    ...numbers,
  ];
  return all.sort((a, b) => a.from - b.from || b.to - a.to);
};

const denied = (scan: Scan, mention: Mention): boolean => {
  for (let left = mention.from - 1; left >= mention.from - 3 && left >= 0; left--) {
    const word = scan.tokens[left]?.norm ?? "";
    if (NEGATIVES.has(word) && word !== "no") return true;
    if (!DETERMINERS.has(word) && word !== "on" && word !== "in" && word !== "with") return false;
  }
  return false;
};

type Fix = { readonly old: Mention; readonly now: Mention; readonly alsoDead: readonly Mention[] };

const sameSort = (a: Mention["type"], b: Mention["type"]): boolean =>
  a === b || (b === "number" && (a === "money" || a === "use")) || (a === "number" && b === "number");

/** "no light" says that there is none; "no the freezer", "no twelve fifty" put one thing for another. */
const plainlyInstead = (scan: Scan, now: Mention, cue: Stretch): boolean => {
  if (now.type !== "component" && now.type !== "material") return true;
  const between = scan.tokens.slice(cue.to, now.from).map((token) => token.norm);
  const bare = cue.to - cue.from === 1 && scan.tokens[cue.from]?.norm === "no";
  return (
    !bare ||
    (between.length > 0 &&
      between.length <= 3 &&
      (DETERMINERS.has(between[0] ?? "") || NEGATIVES.has(between[0] ?? ""))) ||
    (now.type === "material" && scan.tokens[cue.from - 1]?.norm === "tape")
  );
};

const fixAt = (scan: Scan, mentions: readonly Mention[], cue: Stretch, faint: boolean): Fix | undefined => {
  const after = startingIn(mentions, cue.to, cue.to + REACH).filter(
    (mention) => mention.from >= cue.to && mention.from < cue.to + (faint ? 4 : REACH),
  );
  const before = touching(mentions, cue.from - REACH, cue.from)
    .filter((mention) => mention.to <= cue.from && mention.to > cue.from - (faint ? 7 : REACH))
    .reverse();
  const refused = after.filter((mention) => denied(scan, mention));
  const wanted = refused[0]?.type;
  for (const now of after) {
    if (refused.includes(now) || (wanted !== undefined && !sameSort(wanted, now.type))) continue;
    const old = before.find(
      (mention) =>
        sameSort(mention.type, now.type) &&
        (mention.counted ?? now.counted ?? "") === (now.counted ?? mention.counted ?? ""),
    );
    if (old === undefined) continue;
    if (faint && (now.type === "deed" || !plainlyInstead(scan, now, cue))) continue;
    return { old, now, alsoDead: refused.filter((mention) => mention.type === now.type) };
  }
  return undefined;
};

const fixesOf = (scan: Scan, deeds: readonly Deed[]): Fix[] => {
  const cues = scan.cues.filter((cue) => cue.value === "correct");
  if (cues.length === 0) return [];
  const mentions = mentionsOf(scan, deeds);
  return cues
    .map((cue) => fixAt(scan, mentions, cue, FAINT.has(cue.source)))
    .filter((fix) => fix !== undefined);
};

const revalued = (
  amounts: readonly Amount[],
  fixes: readonly Fix[],
  numbers: readonly NumberRef[],
  scan: Scan,
): Amount[] =>
  amounts.map((amount, index) => {
    const fix = fixes.find(
      ({ old, now }) =>
        now.type === "number" && (old.type === "money" || old.type === "use") && old.index === index,
    );
    const number = fix === undefined ? undefined : numbers[fix.now.index];
    if (number === undefined) return amount;
    return { ...amount, value: amount.what === "money" ? priceOf(number, scan.tokens) : number.value };
  });

/** Applies "no wait, the gray one", "not butyl, it was silicone", "eleven dollars, no, twelve fifty". */
export const corrected = (scan: Scan, deeds: readonly Deed[]): Corrected => {
  const dead = new Uint8Array(scan.tokens.length);
  const fixes = fixesOf(scan, deeds);
  const components = [...scan.components];
  for (const { old, now, alsoDead } of fixes) {
    for (const gone of now.type === "number" ? alsoDead : [old, ...alsoDead])
      dead.fill(1, gone.from, gone.to);
    const [was, is] = [components[old.index], components[now.index]];
    if (now.type === "component" && was !== undefined && is !== undefined) {
      dead.fill(0, old.from, old.to);
      components[old.index] = { ...is, from: was.from, to: was.to, weak: false };
      dead.fill(1, now.from, now.to);
    }
  }
  return {
    dead,
    components: components.filter((ref) => dead[ref.from] !== 1),
    amounts: revalued(scan.amounts, fixes, scan.numbers, scan),
  };
};
