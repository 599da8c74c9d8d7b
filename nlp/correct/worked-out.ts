import type { Scan, Stretch } from "../read/scan.ts";

/** A sum that a message does not say, but lets one work out from what is on record or from its own numbers. */
export type WorkedOut = Stretch & {
  readonly cost: number;
  readonly how: "plus" | "minus" | "times" | "half" | "double" | "nothing" | "product" | "total";
};

type Number = Stretch & { readonly value: number };

/** More numbers than this, and nobody reckons. */
const MOST_NUMBERS = 4;
/** As many of a thing as are bought at once. */
const MOST_PIECES = 12;

const PAIR: ReadonlySet<string> = new Set(["both", "pair", "couple"]);
const HALF: ReadonlySet<string> = new Set(["half", "halves", "halved"]);
const DOUBLE: ReadonlySet<string> = new Set(["double", "doubled"]);
/** "Twice that", "twice as much"; "in and out twice" is no sum. */
const TWICE_OF: ReadonlySet<string> = new Set(["that", "as", "what", "the"]);
const NOTHING: ReadonlySet<string> = new Set(
  "free nothing zero nowt gratis warranty complimentary refunded nil".split(" "),
);

const cents = (value: number): number => Math.round(value * 100) / 100;

const isCount = ({ value }: Number): boolean => Number.isInteger(value) && value >= 2 && value <= MOST_PIECES;

const pairs = (numbers: readonly Number[]): [Number, Number][] =>
  numbers.flatMap((one, at) => numbers.slice(at + 1).map((other): [Number, Number] => [one, other]));

const ofTwo = (one: Number, other: Number): WorkedOut[] => {
  const at = { from: Math.min(one.from, other.from), to: Math.max(one.to, other.to) };
  return [
    { ...at, cost: cents(one.value + other.value), how: "total" },
    ...(isCount(one) !== isCount(other)
      ? [{ ...at, cost: cents(one.value * other.value), how: "product" } as const]
      : []),
  ];
};

const MORE: ReadonlySet<string> = new Set([
  "more",
  "extra",
  "another",
  "plus",
  "dearer",
  "top",
  "add",
  "added",
  "adding",
]);
const LESS: ReadonlySet<string> = new Set(["less", "off", "cheaper", "minus"]);
/** As many words behind a number may hold one of these: "30 dollars more", "30 on top". */
const BEHIND = 2;

/** "Forty more like", "more or less forty": no sum that comes on top. */
const NOT_MORE: ReadonlySet<string> = new Set(["like", "or", "than"]);

/** "Had 41 off me", "30 off us": had from somebody, and no discount. */
const isHadOff = (tokens: Scan["tokens"], to: number): boolean => {
  const off = [to, to + 1].find((at) => tokens[at]?.norm === "off");
  return off !== undefined && FROM_SOMEBODY.has(tokens[off + 1]?.norm ?? "");
};
const FROM_SOMEBODY: ReadonlySet<string> = new Set("me us you him her them".split(" "));

/** "Thirty more", "ten bucks off": which way a number is told to change the sum; undefined where it is not told. */
export const wayOf = ({ from, to }: Stretch, { tokens }: Scan): "plus" | "minus" | undefined => {
  const around = [...tokens.slice(Math.max(0, from - 1), from), ...tokens.slice(to, to + BEHIND)];
  const [more, less] = [MORE, LESS].map((words) => around.some(({ norm }) => words.has(norm)));
  const likened = tokens.slice(to, to + BEHIND + 1).some(({ norm }) => NOT_MORE.has(norm));
  return more === less || likened || isHadOff(tokens, to) ? undefined : more === true ? "plus" : "minus";
};

/** Whether a message changes a sum by so much, so that it is about a record that has one. */
export const tellsMoreOrLess = (scan: Scan): boolean =>
  scan.numbers.some((number) => wayOf(number, scan) !== undefined);

const ofOne = (number: Number, kept: number, way: ReturnType<typeof wayOf>): WorkedOut[] => [
  ...(way === "minus" ? [] : [{ ...number, cost: cents(kept + number.value), how: "plus" } as const]),
  ...(number.value < kept && way !== "plus"
    ? [{ ...number, cost: cents(kept - number.value), how: "minus" } as const]
    : []),
  ...(isCount(number) && way === undefined
    ? [{ ...number, cost: cents(kept * number.value), how: "times" } as const]
    : []),
];

/**
 * What may be worked out from the numbers that a message says, each above 0, and from the sum `kept` on record: "nine for
 * the tape too", "that was each and there were two", "we went halves".
 */
export const workedOut = (
  scan: Scan,
  numbers: readonly Number[],
  kept: number | null,
): readonly WorkedOut[] => {
  const few = numbers.length <= MOST_NUMBERS ? numbers : [];
  const words = scan.tokens.flatMap(({ norm }, at): WorkedOut[] => {
    const stretch = { from: at, to: at + 1 };
    if (NOTHING.has(norm)) return [{ ...stretch, cost: 0, how: "nothing" }];
    if (kept === null) return [];
    if (HALF.has(norm)) return [{ ...stretch, cost: cents(kept / 2), how: "half" }];
    if (DOUBLE.has(norm) || (norm === "twice" && TWICE_OF.has(scan.tokens[at + 1]?.norm ?? "")))
      return [{ ...stretch, cost: cents(kept * 2), how: "double" }];
    return PAIR.has(norm) ? [{ ...stretch, cost: cents(kept * 2), how: "times" }] : [];
  });
  return [
    ...words,
    ...(kept === null ? [] : few.flatMap((number) => ofOne(number, kept, wayOf(number, scan)))),
    ...pairs(few).flatMap(([one, other]) => ofTwo(one, other)),
  ];
};
