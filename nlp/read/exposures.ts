import type { Exposure, UseUnit } from "../../shared/record.ts";
import type { Amount } from "./amount.ts";
import type { Clause } from "./clauses.ts";
import { wordAt } from "./ground.ts";
import { isRigUse } from "./rig-use.ts";
import type { Scan, Stretch } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { listed } from "./words.ts";

export type Exposed = { readonly value: Exposure; readonly at: Stretch };

const CALENDAR: ReadonlySet<UseUnit> = new Set(["days", "weeks", "months", "years", "seasons"]);
export const LASTING_WORDS = listed("exposuresLastingWords");
const CLEARLY = 0.5;
/** "flat again in three days": how long it lasted. */
const BRIEF = new Set(["in", "within", "inside", "after", "about", "of"]);

const isLasting = (amount: Amount, scan: Scan): boolean => {
  const before = scan.tokens.slice(Math.max(0, amount.from - 4), amount.from).map((token) => token.norm);
  return (
    before.some((word) => LASTING_WORDS.has(word)) ||
    ["since", "now", "later", "on", "running"].includes(wordAt(scan, amount.to))
  );
};

/** Repetitions of a deed are no use of the fix: "reset it nine times", "four times out of five". */
const isRepetition = (amount: Amount, event: Event, scan: Scan): boolean => {
  if (amount.what !== "cycles") return false;
  if (wordAt(scan, amount.to) === "out" && wordAt(scan, amount.to + 1) === "of") return true;
  const first = event.deeds.find((deed) => deed.sense !== "prep");
  return first !== undefined && amount.from - first.to <= 2 && amount.from >= first.at;
};

/** "filled it fifteen times" counts fills. */
export const isFill = (amount: Amount, scan: Scan): boolean =>
  amount.what === "cycles" &&
  scan.tokens
    .slice(Math.max(0, amount.from - 7), amount.from)
    .some((token) => ["filled", "fill", "dumped", "emptied"].includes(token.norm));

/** How far after a bad verdict, in words, its lifetime may be told. */
const LIFETIME = 6;

/** "It let go after three weeks, so ...": a lifetime belongs to the work that the verdict before it is about. */
const lifetimeOf = (told: Told, event: Event, at: number): boolean =>
  told.verdicts.some(
    (verdict) =>
      verdict.value.outcome === "failed" &&
      verdict.from >= event.from &&
      verdict.from < event.to &&
      at >= verdict.from &&
      at - verdict.to < LIFETIME,
  );

/** Whether an amount or time is told of this piece of work and not of one before it. */
const isOf = (told: Told, event: Event, at: number): boolean => {
  if (at >= event.to) return lifetimeOf(told, event, at);
  if (at < event.from) return false;
  const deedAt = Math.min(...event.deeds.map((deed) => deed.at));
  const ofEarlier =
    at < deedAt &&
    told.verdicts.some(
      (verdict) => verdict.value.outcome === "failed" && verdict.from < at && at - verdict.to < LIFETIME,
    );
  return !ofEarlier;
};

const fromAmounts = (told: Told, event: Event, scan: Scan, clauseOf: (at: number) => Clause): Exposed[] => {
  const deedAt = Math.min(...event.deeds.map((deed) => deed.at));
  return told.amounts.flatMap((amount) => {
    const { what } = amount;
    if (what === "money" || what === "reading" || !isOf(told, event, amount.from)) return [];
    const brief =
      CALENDAR.has(what) &&
      BRIEF.has(wordAt(scan, amount.from - 1)) &&
      told.verdicts.some(
        (verdict) => verdict.value.outcome === "failed" && Math.abs(verdict.from - amount.from) < 10,
      );
    if (brief && amount.from > deedAt)
      return [{ value: { count: amount.value, unit: what }, at: { from: amount.from, to: amount.to } }];
    const covered = told.times.some(
      (time) => time.from <= amount.from && time.to >= amount.to && time.time.role !== "lasting",
    );
    if (covered || isRepetition(amount, event, scan) || isRigUse(scan, amount, clauseOf(amount.from)))
      return [];
    if (CALENDAR.has(what) && (amount.from < deedAt || !isLasting(amount, scan))) return [];
    if (amount.from < deedAt && what === "cycles") return [];
    return [
      {
        value: { count: amount.value, unit: isFill(amount, scan) ? "fills" : what },
        at: { from: amount.from, to: amount.to },
      },
    ];
  });
};

/** "All summer": when it was, not how many seasons. */
const isWholeSeason = ({ from, time }: Told["times"][number], scan: Scan): boolean =>
  time.lasting?.unit === "seasons" &&
  scan.tokens.slice(from, from + 3).some(({ norm }) => norm === "all" || norm === "whole");

const fromTimes = (told: Told, event: Event, scan: Scan): Exposed[] =>
  told.times.flatMap((time) => {
    const { role, lasting, sure } = time.time;
    const mine = isOf(told, event, time.from) && !isWholeSeason(time, scan);
    return role === "lasting" && lasting !== undefined && sure >= CLEARLY && mine
      ? [{ value: lasting, at: time }]
      : [];
  });

/** What a piece of work went through afterwards, one amount a unit. */
export const exposuresOf = (
  told: Told,
  event: Event,
  scan: Scan,
  clauseOf: (at: number) => Clause,
): Exposed[] => {
  const all = [...fromAmounts(told, event, scan, clauseOf), ...fromTimes(told, event, scan)];
  return all.filter((each, at) => all.findIndex((other) => other.value.unit === each.value.unit) === at);
};
