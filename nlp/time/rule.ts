import type { Exposure } from "../../shared/record.ts";
import type { Holiday } from "./holidays.ts";
import type { Length } from "./length.ts";
import type { TimeUnit } from "./lexicon.ts";
import type { Said } from "./numbers.ts";
import { compile, type Item } from "./pattern.ts";
import type { Period } from "./period.ts";
import type { Reference } from "./reference.ts";
import type { Token } from "./tokens.ts";

export type Role = "point" | "lasting" | "since" | "until" | "after-that";
export type Direction = "past" | "future" | "either";

/** What each slot of a phrase holds. */
export type SlotValues = {
  n: Said;
  unit: TimeUnit;
  length: Length;
  month: number;
  weekday: number;
  season: number;
  /** A year that is written or said in full: 2023, "twenty twenty three". */
  year: number;
  /** Also "'21", "twenty four". */
  loose: number;
  ord: number;
  /** A day of the month, also as a bare number. */
  mday: number;
  holiday: Holiday;
  part: string;
  /** Any time that stands for itself. */
  when: Period;
  when2: Period;
  weekday2: number;
  month2: number;
  mday2: number;
  loose2: number;
  ord2: number;
  year2: number;
  /** Named in the plural: "two Fridays", "three winters". */
  weekdays: number;
  months: number;
  seasons: number;
  holidays: Holiday;
};
export type SlotName = keyof SlotValues;

/** The slots named in a phrase, and their types. */
export type SlotsOf<P extends string> = P extends `${infer Head} ${infer Tail}`
  ? SlotsOf<Head> & SlotsOf<Tail>
  : P extends `${string}<${infer Name}>?`
    ? Name extends SlotName
      ? { readonly [K in Name]?: SlotValues[K] }
      : never
    : P extends `${string}<${infer Name}>`
      ? Name extends SlotName
        ? { readonly [K in Name]: SlotValues[K] }
        : never
      : unknown;

/** Where a phrase was found. */
export type Place = {
  readonly tokens: readonly Token[];
  /** Index of its first token, and of the one after its last. */
  readonly at: number;
  readonly next: number;
  /** The last point in time spoken of before it, if any. */
  readonly before: Period | undefined;
};

/** What a rule makes of a phrase. */
export type Meaning = {
  readonly period: Period;
  readonly role?: Role;
  readonly direction?: Direction;
  readonly lasting?: Exposure;
  /** 0 to 1. */
  readonly sure?: number;
};

export type Variant = {
  readonly rule: string;
  readonly items: readonly Item[];
  readonly build: (
    slots: Readonly<Record<string, unknown>>,
    reference: Reference,
    place: Place,
  ) => Meaning | undefined;
};

/** A named rule: the phrases it reads and what they mean. Undefined means "not this after all". */
export const rule = <const P extends string>(
  name: string,
  phrases: readonly P[],
  build: (slots: SlotsOf<P>, reference: Reference, place: Place) => Meaning | undefined,
): readonly Variant[] =>
  phrases.flatMap((phrase) =>
    compile(phrase).map((items) => ({
      rule: name,
      items,
      build: (slots, reference, place) => build(slots as SlotsOf<P>, reference, place),
    })),
  );

/** The word before or after a phrase, or "" at the edge of a sentence. */
export const wordBefore = ({ tokens, at }: Place, back = 1): string =>
  tokens[at]?.gap === "stop" ? "" : (tokens[at - back]?.word ?? "");
export const wordAfter = ({ tokens, next }: Place): string => {
  const token = tokens[next];
  return token === undefined || token.gap === "stop" ? "" : token.word;
};
