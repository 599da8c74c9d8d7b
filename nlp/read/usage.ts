import type { UsageDraft } from "../../shared/reading.ts";
import type { Edtf, UseUnit } from "../../shared/record.ts";
import type { Amount } from "./amounts.ts";
import type { Clause } from "./clauses.ts";
import type { Scan } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";

const DRIVE = new Set([
  "towed",
  "tow",
  "towing",
  "drove",
  "driven",
  "drive",
  "driving",
  "did",
  "done",
  "put",
  "covered",
  "came",
  "travelled",
  "traveled",
  "clocked",
  "rolled",
  "hauled",
  "pulled",
  "made",
  "went",
  "run",
  "ran",
  "from",
  "round",
  "down",
  "up",
]);
const CREW = new Set(["we", "weve", "i", "ive", "towed", "drove", "towing", "driving", "our", "us", "all"]);
const STAY = new Set(["here", "stayed", "camped", "parked", "far", "spent", "boondocked", "booked"]);
/** Words that tie an amount to a fix and not to the rig. */
const SINCE = new Set([
  "since",
  "without",
  "it",
  "lasted",
  "held",
  "hasnt",
  "hasn",
  "its",
  "at",
  "every",
  "later",
  "again",
]);

const near = (scan: Scan, amount: Amount, before: number, after: number): string[] =>
  scan.tokens.slice(Math.max(0, amount.from - before), amount.to + after).map((token) => token.norm);

const timeIn = (scan: Scan, clause: Clause): boolean =>
  startingIn(scan.times, clause.from, clause.to).some(
    (time) => time.from >= clause.from && time.to <= clause.to && time.time.role === "point",
  );

/** Whether an amount tells how far or long the rig itself was used. */
export const isRigUse = (scan: Scan, amount: Amount, clause: Clause): boolean => {
  if (amount.what === "nights")
    return (
      near(scan, amount, 6, 4).some((word) => STAY.has(word)) &&
      !near(scan, amount, 4, 2).some((word) => SINCE.has(word))
    );
  if (amount.what !== "miles" && amount.what !== "km") return false;
  const words = near(scan, amount, 8, 5);
  if (words.some((word) => SINCE.has(word) && word !== "it") || words.slice(-5).includes("since"))
    return false;
  const timed = timeIn(scan, clause) || words.includes("far");
  const crew = words.some((word) => CREW.has(word));
  return (words.some((word) => DRIVE.has(word)) && (crew || timed)) || (timed && words.includes("after"));
};

const dateNear = (scan: Scan, amount: Amount, today: Edtf): Edtf => {
  const times = touching(scan.times, amount.from, amount.to + 10).filter(
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

/** Use of the rig itself: distances, nights, meter readings that are not the exposure of a fix. */
export const usageOf = (
  scan: Scan,
  amounts: readonly Amount[],
  clauseOf: (at: number) => Clause,
  skip: (at: number) => boolean,
  today: Edtf,
): UsageDraft[] =>
  amounts.flatMap((amount): UsageDraft[] => {
    const { what, value } = amount;
    if (skip(amount.from) || what === "money") return [];
    const span = { start: scan.tokens[amount.from]?.start ?? 0, end: scan.tokens[amount.to - 1]?.end ?? 0 };
    if (what === "reading")
      return [
        {
          usage: { reading: value, unit: unitOfReading(scan, amount), date: today },
          span,
          sure: 0.9,
          rule: "meter-reading",
        },
      ];
    if (!isRigUse(scan, amount, clauseOf(amount.from))) return [];
    return [
      {
        usage: { count: value, unit: what, date: dateNear(scan, amount, today) },
        span,
        sure: 0.8,
        rule: "use-of-the-rig",
      },
    ];
  });
