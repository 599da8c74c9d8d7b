import type { UsageDraft } from "../../shared/reading.ts";
import type { Edtf, UseUnit } from "../../shared/record.ts";
import type { Amount } from "./amounts.ts";
import type { Scan } from "./scan.ts";

const DRIVE = new Set([
  "towed",
  "tow",
  "drove",
  "driven",
  "drive",
  "did",
  "done",
  "put",
  "miles",
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
  "from",
  "day",
  "run",
  "ran",
]);
const STAY = new Set(["here", "stayed", "camped", "out", "parked", "far", "spent", "slept", "boondocked"]);

const isUsage = (scan: Scan, amount: Amount): boolean => {
  const around = scan.tokens.slice(Math.max(0, amount.from - 8), amount.to + 6).map((token) => token.norm);
  if (amount.what === "miles" || amount.what === "km") return around.some((word) => DRIVE.has(word));
  if (amount.what === "nights") return around.some((word) => STAY.has(word));
  return amount.what === "cycles" ? false : false;
};

const dateNear = (scan: Scan, amount: Amount, today: Edtf): Edtf => {
  const near = scan.times
    .filter(
      (time) =>
        (time.time.role === "point" || time.time.role === "since") &&
        time.from > amount.from - 12 &&
        time.from < amount.to + 10 &&
        time.time.direction !== "future",
    )
    .sort((a, b) => Math.abs(a.from - amount.from) - Math.abs(b.from - amount.from))[0];
  return near?.time.edtf ?? today;
};

/** Use of the rig itself: distances, nights, meter readings that are not the exposure of a fix. */
export const usageOf = (
  scan: Scan,
  amounts: readonly Amount[],
  taken: ReadonlySet<number>,
  dead: Uint8Array,
  today: Edtf,
): UsageDraft[] =>
  amounts.flatMap((amount): UsageDraft[] => {
    if (taken.has(amount.from) || dead[amount.from] === 1) return [];
    const span = { start: scan.tokens[amount.from]?.start ?? 0, end: scan.tokens[amount.to - 1]?.end ?? 0 };
    if (amount.what === "reading") {
      const unit: UseUnit = ["km", "kms", "ks"].includes(scan.tokens[amount.to - 1]?.norm ?? "")
        ? "km"
        : "miles";
      return [
        {
          usage: { reading: amount.value, unit, date: dateNear(scan, amount, today) },
          span,
          sure: 0.9,
          rule: "meter-reading",
        },
      ];
    }
    if (amount.what === "money" || !isUsage(scan, amount)) return [];
    return [
      {
        usage: { count: amount.value, unit: amount.what, date: dateNear(scan, amount, today) },
        span,
        sure: 0.8,
        rule: "use-of-the-rig",
      },
    ];
  });
