import type { UsageDraft } from "../../shared/reading.ts";
import type { Edtf, UseUnit } from "../../shared/record.ts";
import type { Amount } from "./amounts.ts";
import type { Clause } from "./clauses.ts";
import { putOn } from "./put-on.ts";
import type { Scan } from "./scan.ts";
import data from "./usage.json" with { type: "json" };

const TRAVEL = new Set(data.travel);
const CREW = new Set(data.crew);
const LEGS = new Set(data.legs);
const STAY = new Set(data.stay);
const FIX = new Set(data.fix);
const STRONG = new Set(data.strong);
const BEFORE = new Set(data.before);
const AFTER = new Set(data.after);
const BARE = new Set(data.bareWords);

const DISTANCES = new Set(["miles", "mile", "km", "kms", "ks", "k"]);

/** How many words before and after an amount tell what it is of. */
const LEAD = 9;
const TAIL = 5;

const has = (words: readonly string[], set: ReadonlySet<string>): boolean =>
  words.some((word) => set.has(word));

const before = (scan: Scan, amount: Amount, count: number, floor = 0): string[] =>
  scan.tokens.slice(Math.max(floor, amount.from - count), amount.from).map((token) => token.norm);
const after = (scan: Scan, amount: Amount, count: number): string[] =>
  scan.tokens.slice(amount.to, amount.to + count).map((token) => token.norm);

const sentenceFloor = (scan: Scan, at: number): number => {
  for (let left = at - 1; left > at - LEAD && left >= 0; left--)
    if ([".", "!", "?", ";"].includes(scan.tokens[left]?.norm ?? "")) return left + 1;
  return 0;
};

const timeIn = (scan: Scan, amount: Amount, clause: Clause): boolean =>
  scan.times.some(
    (time) =>
      time.from >= clause.from - 3 &&
      time.to <= Math.max(clause.to, amount.to + TAIL) &&
      time.from < amount.to + TAIL &&
      (time.time.role === "point" || time.time.role === "since") &&
      time.time.direction !== "future",
  );

/** "Forty miles away", "sixty miles an hour", "walked five miles": no use of the rig. */
const isNeither = (lead: readonly string[], tail: readonly string[]): boolean =>
  has(lead.slice(-3), BEFORE) || AFTER.has(tail[0] ?? "") || (tail[0] === "out" && tail[1] === "of");

/** "And now we have driven a thousand miles", "240 miles since": told of the fix before it. */
const ofFix = (lead: readonly string[], tail: readonly string[], timed: boolean): boolean => {
  if (has(lead.slice(-6), STRONG) || has(tail.slice(0, 3), STRONG)) return true;
  if (tail[0] === "since" && !timed) return true;
  return !timed && (lead.includes("since") || lead.includes("now") || (lead.at(-1) ?? "") === "after");
};

const isDistance = (scan: Scan, amount: Amount, clause: Clause): boolean => {
  const floor = sentenceFloor(scan, amount.from);
  const lead = before(scan, amount, LEAD, floor);
  const tail = after(scan, amount, TAIL);
  const timed = timeIn(scan, amount, clause);
  if (isNeither(lead, tail) || ofFix(lead, tail, timed)) return false;
  const crew = lead.findLastIndex((word) => CREW.has(word));
  const moved = crew >= 0 && has(lead.slice(crew), TRAVEL);
  if (moved) return true;
  if (lead.slice(-4).includes("meter")) return true;
  const legs = tail.slice(0, 2).some((word) => LEGS.has(word));
  return (
    (timed && (legs || has(lead, TRAVEL) || lead.includes("after"))) ||
    (tail[0] === "from" && tail.includes("to"))
  );
};

/** Nothing in its sentence but the amount: "Two nights." */
const isBare = (scan: Scan, amount: Amount, clause: Clause): boolean =>
  scan.tokens.slice(clause.from, clause.to).every((token, at) => {
    const place = clause.from + at;
    return (place >= amount.from && place < amount.to) || token.kind === "mark" || BARE.has(token.norm);
  }) && clause.hard;

/** "3,400 miles this year and 31 nights". */
const afterDistance = (lead: readonly string[]): boolean =>
  lead.at(-1) === "and" && lead.some((word) => DISTANCES.has(word));

const isStay = (scan: Scan, amount: Amount, clause: Clause): boolean => {
  const lead = before(scan, amount, 6, sentenceFloor(scan, amount.from));
  const tail = after(scan, amount, 4);
  const crew = lead.findLastIndex((word) => CREW.has(word));
  if (has(lead.slice(crew + 1), FIX) || has(tail.slice(0, 2), FIX)) return false;
  if (isBare(scan, amount, clause) || afterDistance(lead)) return true;
  return (
    (crew >= 0 && has(lead.slice(crew), STAY)) ||
    tail[0] === "here" ||
    (has(lead, STAY) && tail[0] === "here")
  );
};

/** Whether an amount tells how far or long the rig itself was used. */
export const isRigUse = (scan: Scan, amount: Amount, clause: Clause): boolean => {
  if (amount.what === "nights") return isStay(scan, amount, clause);
  return (amount.what === "miles" || amount.what === "km") && isDistance(scan, amount, clause);
};

/** "3,400 miles this year and 31 nights": a second amount told along with the first. */
const goesWith = (scan: Scan, amount: Amount, last: Amount | undefined): boolean =>
  last !== undefined &&
  (amount.what === "nights" || amount.what === "miles" || amount.what === "km") &&
  amount.from - last.to <= 5 &&
  scan.tokens.slice(last.to, amount.from).some((token) => ["and", ",", "over", "in"].includes(token.norm));

const dateNear = (scan: Scan, amount: Amount, today: Edtf): Edtf => {
  const times = scan.times.filter(
    ({ from, to, time }) =>
      (time.role === "point" || time.role === "since") &&
      from > amount.from - 10 &&
      to < amount.to + 10 &&
      time.direction !== "future",
  );
  const nearest = times.sort((a, b) => Math.abs(a.from - amount.to) - Math.abs(b.from - amount.to))[0];
  return nearest?.time.edtf ?? today;
};

const unitOfReading = (scan: Scan, amount: Amount): UseUnit =>
  ["km", "kms", "ks"].includes(scan.tokens[amount.to - 1]?.norm ?? "") ? "km" : "miles";

const READING_SURE = 0.9;
const USE_SURE = 0.8;
const PUT_ON_SURE = 0.6;

const draft = (
  scan: Scan,
  amount: Amount,
  usage: UsageDraft["usage"],
  sure: number,
  rule: string,
): UsageDraft => ({
  usage,
  span: { start: scan.tokens[amount.from]?.start ?? 0, end: scan.tokens[amount.to - 1]?.end ?? 0 },
  sure,
  rule,
});

/** Use of the rig itself: distances, nights, meter readings that are not the exposure of a fix. */
export const usageOf = (
  scan: Scan,
  amounts: readonly Amount[],
  clauseOf: (at: number) => Clause,
  skip: (at: number) => boolean,
  today: Edtf,
): UsageDraft[] => {
  const found = putOn(scan).map((amount) =>
    draft(
      scan,
      amount,
      { count: amount.value, unit: amount.what, date: dateNear(scan, amount, today) },
      PUT_ON_SURE,
      "put-on-the-rig",
    ),
  );
  let last: Amount | undefined;
  for (const amount of amounts) {
    const { what, value } = amount;
    if (what === "money" || skip(amount.from)) continue;
    if (what === "reading") {
      found.push(
        draft(
          scan,
          amount,
          { reading: value, unit: unitOfReading(scan, amount), date: today },
          READING_SURE,
          "meter-reading",
        ),
      );
      continue;
    }
    if (!isRigUse(scan, amount, clauseOf(amount.from)) && !goesWith(scan, amount, last)) continue;
    last = amount;
    found.push(
      draft(
        scan,
        amount,
        { count: value, unit: what, date: dateNear(scan, amount, today) },
        USE_SURE,
        "use-of-the-rig",
      ),
    );
  }
  return found;
};
