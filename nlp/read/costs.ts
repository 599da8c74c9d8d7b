import type { Amount } from "./amount.ts";
import type { Build } from "./build.ts";
import type { Made } from "./made.ts";
import data from "./money.json" with { type: "json" };
import type { Stretch } from "./stretch.ts";
import type { Event, Told } from "./told.ts";
import { startingIn } from "./windows.ts";

const NOT_SPENT = new Set(data.notSpent);
const OTHER = new Set(data.otherThings);
const RATES = new Set(data.rates);
const WHOLE = data.whole.map((phrase) => phrase.split(" "));
const LOOK_BACK = 5;
const LOOK_AHEAD = 4;

const words = ({ scan }: Build, from: number, to: number): string[] =>
  scan.tokens.slice(Math.max(0, from), to).map((token) => token.norm);

/** "Three dollars a gallon", "forty a night". */
export const isRate = (money: Stretch, build: Build): boolean => {
  const [article, unit] = words(build, money.to, money.to + 2);
  return ["a", "an", "per", "/", "the"].includes(article ?? "") && RATES.has(unit ?? "");
};

const LINKS = new Set(["for", "on", "in", "of", "worth", "the", "a", "some", "was", "is", "cost", "and"]);

/** "Forty for the campsite", "the ferry was eighty". */
const onOtherThings = (money: Stretch, build: Build): boolean => {
  const after = words(build, money.to, money.to + LOOK_AHEAD);
  const [first, next] = [after[0] ?? "", after.find((word) => !LINKS.has(word)) ?? ""];
  const before = words(build, money.from - 2, money.from).findLast((word) => !LINKS.has(word)) ?? "";
  return OTHER.has(first) || (LINKS.has(first) && OTHER.has(next)) || OTHER.has(before);
};

/** Not what somebody asked, what was saved or got back, or what went on something else than the rig. */
export const isSpent = (money: Stretch, build: Build): boolean => {
  const { clauses, index } = build;
  const { from } = clauses[index[money.from] ?? 0] ?? { from: 0 };
  const before = words(build, Math.max(from, money.from - LOOK_BACK), money.from);
  return !before.some((word) => NOT_SPENT.has(word)) && !onOtherThings(money, build);
};

/** "Thirty one fifty apiece, so sixty three dollars all told". */
const isWhole = (money: Amount, build: Build): boolean => {
  const said = words(build, money.from - 2, money.to + LOOK_AHEAD);
  return WHOLE.some((phrase) => said.some((_, at) => phrase.every((word, step) => said[at + step] === word)));
};

const isMoney = ({ what }: Amount): boolean => what === "money";

/** The money said within one piece of work: the whole sum before its parts, what was paid before what was asked. */
export const costOf = (told: Told, event: Event, build: Build): Made["cost"] => {
  const all = startingIn(told.amounts, event.from, event.to).filter(
    (money) => isMoney(money) && !isRate(money, build),
  );
  const spent = all.filter((money) => isSpent(money, build));
  const sums = event.kind === "plan" && spent.length === 0 ? all : spent;
  const money = sums.find((each) => isWhole(each, build)) ?? sums[0];
  return money === undefined ? null : { value: money.value, at: money };
};

const FARTHEST = 3;

/** How many clauses money is told after the work of a record. */
const distance = ({ event, kind }: Made, money: Amount, { index }: Build): number => {
  if (event === null || kind === "check" || kind === "fault") return Infinity;
  const last = event.deeds.filter((deed) => deed.at < money.from).at(-1);
  return last === undefined ? Infinity : (index[money.from] ?? 0) - last.clause;
};

/** Gives money that no record has yet to the piece of work right before it: "…, stone cold. 7.50". */
export const withCosts = (made: readonly Made[], amounts: readonly Amount[], build: Build): Made[] => {
  const out = [...made];
  for (const money of amounts) {
    if (!isMoney(money) || isRate(money, build) || !isSpent(money, build)) continue;
    if (out.some(({ cost, span }) => cost !== null && money.from >= span.from && money.from < span.to))
      continue;
    const near = out.map((each) => distance(each, money, build));
    const best = near.lastIndexOf(Math.min(...near));
    const record = out[best];
    if (record !== undefined && record.cost === null && (near[best] ?? Infinity) <= FARTHEST)
      out[best] = { ...record, cost: { value: money.value, at: money } };
  }
  return out;
};
