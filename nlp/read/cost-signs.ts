import type { Amount, NumberRef } from "./amount.ts";
import type { Build } from "./build.ts";
import { isRate, isSpent } from "./costs.ts";
import { clauseAt, wordAt } from "./ground.ts";
import { type Made, mainDeed } from "./made.ts";
import { mayBeInCents } from "./prices.ts";
import { isRigUse } from "./rig-use.ts";
import type { Stretch } from "./scan.ts";
import { sizeOf } from "./sizes.ts";
import { startingIn } from "./windows.ts";

/** A sum that a piece of work may have cost: told with its currency, or a number that may be one. */
export type CostChoice = {
  readonly value: number;
  readonly at: Stretch;
  readonly ruled: boolean;
  readonly by: "money" | "number" | "cents";
};

const BACK = 14;
const AHEAD = 45;
const LEAST = 2;
const MOST = 20_000;

const placeOf = (made: Made): number => mainDeed(made)?.at ?? made.span.from;
const overlaps = (one: Stretch, other: Stretch): boolean => one.from < other.to && other.from < one.to;

const NO_SUM: ReadonlySet<string> = new Set(["ordinal", "fraction", "vague"]);

/** What a number may come to: as it is said, and in hundredths where it may be. */
const sumsOf = (number: NumberRef): CostChoice[] => {
  const { from, to, value } = number;
  const sum = { value, at: { from, to }, ruled: false, by: "number" } as const;
  return mayBeInCents(number) ? [sum, { ...sum, value: value / 100, by: "cents" }] : [sum];
};

const isSum = (number: NumberRef, amounts: readonly Amount[]): boolean =>
  !NO_SUM.has(number.kind) &&
  number.value >= LEAST &&
  number.value < MOST &&
  !amounts.some((amount) => overlaps(amount, number));

/** All sums and bare numbers told near a record, what the rules take first. */
export const costChoices = (made: Made, build: Build): CostChoice[] => {
  const { scan, dead } = build;
  const at = placeOf(made);
  const [from, to] = [Math.max(0, Math.min(at - BACK, made.span.from)), at + AHEAD];
  const amounts = startingIn(scan.amounts, from - BACK, to);
  const ruled: CostChoice[] = made.cost === null ? [] : [{ ...made.cost, ruled: true, by: "money" }];
  const others = [
    ...amounts.flatMap((amount): CostChoice[] =>
      amount.what === "money" && amount.from >= from && dead[amount.from] !== 1
        ? [{ value: amount.value, at: { from: amount.from, to: amount.to }, ruled: false, by: "money" }]
        : [],
    ),
    ...startingIn(scan.numbers, from, to).flatMap((number) =>
      isSum(number, amounts) && dead[number.from] !== 1 ? sumsOf(number) : [],
    ),
  ];
  const free = others.filter(
    ({ at: place }) =>
      !isRate(place, build) && isSpent(place, build) && !ruled.some((other) => overlaps(other.at, place)),
  );
  return [...ruled, ...free];
};

/** The signs, as names, that tell whether a sum is what a record's own work cost. */
export const costSigns = (
  made: Made,
  next: Made | undefined,
  choice: CostChoice,
  choices: readonly CostChoice[],
  build: Build,
): string[] => {
  const { scan, index, deeds } = build;
  const place = placeOf(made);
  const { from, to } = choice.at;
  const side = from < place ? "before" : "after";
  const [left, right] = side === "before" ? [to, place] : [place + 1, from];
  const apart = `${side} ${sizeOf(Math.abs((index[from] ?? 0) - (index[place] ?? 0)))}`;
  const between = startingIn(deeds, left, right).filter((deed) => deed.at >= left && deed.at < right);
  const done = sizeOf(between.filter((deed) => deed.status === "done").length);
  const others = startingIn(scan.components, left, right).filter(
    (ref) => ref.id !== made.told.topic.component && !ref.weak,
  );
  const clause = clauseAt(build, from);
  const passed = next !== undefined && from >= placeOf(next);
  const inTime = startingIn(scan.times, from - 3, to).some((time) => overlaps(time, choice.at));
  const amount = startingIn(scan.amounts, from, from + 1)[0];
  const ofRig = amount !== undefined && isRigUse(scan, amount, clause);
  const marked = scan.tokens[from - 1]?.kind === "mark" ? wordAt(scan, from - 1) : "none";
  const ends = to >= scan.tokens.length ? "note" : scan.tokens[to]?.kind === "mark" ? "mark" : "no";
  const written = scan.tokens[from]?.kind === "number" ? "figures" : `words ${sizeOf(to - from)}`;
  const sums = choices.filter(({ by, at }) => by === choice.by && at !== choice.at).length;
  const by = `by=${choice.by} ruled=${String(choice.ruled)}`;
  const size =
    choice.value < 10 ? "small" : choice.value < 100 ? "tens" : choice.value < 1000 ? "hundreds" : "more";
  const round = choice.value % 5 === 0 ? "round" : "odd";
  const about = scan.tokens.slice(Math.max(clause.from, from - 8), Math.min(clause.to, to + 6));
  return [
    by,
    `${by} kind=${made.kind}`,
    `${by} kind=${made.kind} action=${made.action ?? "none"}`,
    `${by} apart=${apart}`,
    `${by} done=${done} others=${sizeOf(others.length)}`,
    `${by} passed=${String(passed)}`,
    `${by} size=${size} ${round}`,
    `${by} written=${written}`,
    `${by} written=${written} time=${String(inTime)}`,
    `${by} time=${String(inTime)} marked=${marked} ends=${ends}`,
    `${by} marked=${marked} ends=${ends} written=${written} size=${size}`,
    `${by} size=${size} of=${made.told.topic.component}`,
    `${by} size=${size} action=${made.action ?? "none"}`,
    `${by} sums=${sizeOf(sums)}`,
    `${by} rig=${String(ofRig)}`,
    `${by} left=${wordAt(scan, from - 1)}`,
    `${by} left2=${wordAt(scan, from - 2)} ${wordAt(scan, from - 1)}`,
    `${by} left3=${wordAt(scan, from - 3)} ${wordAt(scan, from - 2)} ${wordAt(scan, from - 1)}`,
    `${by} right=${wordAt(scan, to)}`,
    `${by} right2=${wordAt(scan, to)} ${wordAt(scan, to + 1)}`,
    `${by} around=${wordAt(scan, from - 1)} ${wordAt(scan, to)}`,
    `right3=${wordAt(scan, to)} ${wordAt(scan, to + 1)} ${wordAt(scan, to + 2)}`,
    `left=${wordAt(scan, from - 1)} written=${written}`,
    `gap=${side} ${sizeOf(right - left)} ${by}`,
    `passed=${String(passed)} done=${done} apart=${apart}`,
    `ends=${ends} marked=${marked} size=${size}`,
    ...about.map(({ norm }) => `${by} word=${norm}`),
  ];
};

/** What each record cost: of the sums taken for it the surest, and no sum for two. */
export const paidFor = (
  rated: readonly (readonly { readonly choice: CostChoice; readonly sure: number }[])[],
  enough: number,
): (CostChoice | undefined)[] => {
  const taken = rated.flatMap((all, record) =>
    all.flatMap(({ choice, sure }) => (sure >= enough ? [{ record, choice, sure }] : [])),
  );
  const paid: (CostChoice | undefined)[] = rated.map(() => undefined);
  for (const { record, choice } of taken.toSorted((a, b) => b.sure - a.sure))
    if (
      paid[record] === undefined &&
      !paid.some((other) => other !== undefined && overlaps(other.at, choice.at))
    )
      paid[record] = choice;
  return paid;
};
