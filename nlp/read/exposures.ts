import type { Exposure, UseUnit } from "../../shared/record.ts";
import type { Amount } from "./amounts.ts";
import type { Clause } from "./clauses.ts";
import type { Event, Told } from "./events.ts";
import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import { isRigUse } from "./usage.ts";

export type Exposed = { readonly value: Exposure; readonly at: Stretch };

const CALENDAR: ReadonlySet<UseUnit> = new Set(["days", "weeks", "months", "years", "seasons"]);
const LASTING_WORDS = new Set([
  "lasted",
  "last",
  "held",
  "hold",
  "holds",
  "for",
  "within",
  "inside",
  "been",
  "after",
  "about",
  "thats",
  "good",
  "all",
]);
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
const isFill = (amount: Amount, scan: Scan): boolean =>
  amount.what === "cycles" &&
  scan.tokens
    .slice(Math.max(0, amount.from - 7), amount.from)
    .some((token) => ["filled", "fill", "dumped", "emptied"].includes(token.norm));

const fromAmounts = (told: Told, event: Event, scan: Scan, clauseOf: (at: number) => Clause): Exposed[] => {
  const deedAt = Math.min(...event.deeds.map((deed) => deed.at));
  return told.amounts.flatMap((amount) => {
    const { what } = amount;
    if (what === "money" || what === "reading" || amount.from < event.from || amount.from >= event.to)
      return [];
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

const fromTimes = (told: Told, event: Event): Exposed[] =>
  told.times.flatMap((time) => {
    const { role, lasting, sure } = time.time;
    const mine = time.from >= event.from && time.from < event.to;
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
  const all = [...fromAmounts(told, event, scan, clauseOf), ...fromTimes(told, event)];
  return all.filter((each, at) => all.findIndex((other) => other.value.unit === each.value.unit) === at);
};
