import { Temporal } from "temporal-polyfill";
import { daySpan } from "../../shared/edtf.ts";
import type { UsageDraft } from "../../shared/reading.ts";
import type { Edtf, UseUnit } from "../../shared/record.ts";
import type { Amount } from "./amount.ts";
import { clauseAt, type Ground } from "./ground.ts";
import type { Judges } from "./judges.ts";
import { putOn, unitHere } from "./put-on.ts";
import { correctedBy, isNoUse, isRigUse } from "./rig-use.ts";
import type { Scan } from "./scan.ts";
import { usageSigns } from "./usage-signs.ts";
import type { UseChoice } from "./use-choice.ts";
import { startingIn } from "./windows.ts";

/** "3,400 miles this year and 31 nights": a second amount told along with the first. */
const goesWith = (scan: Scan, amount: Amount, last: Amount | undefined): boolean =>
  last !== undefined &&
  (amount.what === "nights" || amount.what === "miles" || amount.what === "km") &&
  amount.from - last.to <= 5 &&
  scan.tokens.slice(last.to, amount.from).some((token) => ["and", ",", "over", "in"].includes(token.norm));

const REACH = 10;

/** From a month on until now. */
const untilNow = (since: Edtf, today: Edtf, { moment }: Scan): Edtf => {
  const from = daySpan(since, moment.hemisphere)?.from;
  if (from === undefined) return since;
  const now = Temporal.PlainDate.from(today);
  if (from.month === 1 && from.day === 1 && from.year === now.year) return today.slice(0, 4);
  if (from.year === now.year && from.month === now.month) return `${from.toString()}/${today}`;
  return `${from.toString().slice(0, 7)}/${today.slice(0, 7)}`;
};

/** When an amount was told to be: a day, a season, or since some time until now. */
const dateNear = (scan: Scan, amount: Amount, today: Edtf): Edtf => {
  const times = startingIn(scan.times, amount.from - REACH + 1, amount.to + REACH).filter(
    ({ to, time }) =>
      (time.role === "point" || time.role === "since") &&
      to < amount.to + REACH &&
      time.direction !== "future",
  );
  const nearest = times.toSorted((a, b) => Math.abs(a.from - amount.to) - Math.abs(b.from - amount.to))[0];
  if (nearest === undefined) return today;
  const { edtf, role } = nearest.time;
  return role === "since" ? untilNow(edtf, today, scan) : edtf;
};

const KILOMETRES = new Set(["km", "kms", "ks", "kays", "kilometers", "kilometres"]);
const MILES = new Set(["mile", "miles", "mi"]);
const unitOfReading = (scan: Scan, amount: Amount): UseUnit => {
  const said = scan.tokens.slice(amount.from, amount.to).map((token) => token.norm);
  if (said.some((word) => KILOMETRES.has(word))) return "km";
  return said.some((word) => MILES.has(word)) ? "miles" : unitHere(scan);
};

const READING_SURE = 0.9;

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

/** All amounts that may tell use of the rig itself; those that the speaker took back only lend theirs to what is said instead. */
const useChoices = (ground: Ground): UseChoice[] => {
  const { scan, fixed } = ground;
  const isUse = (amount: Amount): boolean => isRigUse(scan, amount, clauseAt(ground, amount.from));
  const choices = putOn(scan).map(
    (amount): UseChoice => ({ ...amount, ruled: true, rule: "put-on-the-rig" }),
  );
  let last: Amount | undefined;
  for (const amount of fixed.amounts) {
    const { what, from } = amount;
    if (what === "money" || what === "reading" || fixed.dead[from] === 1) continue;
    if (isNoUse(scan, amount, clauseAt(ground, from))) continue;
    const instead = correctedBy(fixed.amounts, amount);
    const ruled =
      isUse(amount) ||
      goesWith(scan, amount, last) ||
      (instead !== undefined && fixed.dead[instead.from] === 1 && isUse(instead));
    if (ruled) last = amount;
    choices.push({ ...amount, what, ruled, rule: "use-of-the-rig" });
  }
  return choices;
};

const EVEN = 0.5;

/** Use of the rig itself: distances, nights, meter readings that are not the exposure of a fix; in order. */
export const usageOf = (ground: Ground, today: Edtf, judges: Judges): UsageDraft[] => {
  const { scan, fixed } = ground;
  const choices = useChoices(ground);
  const used = choices.flatMap((choice): UsageDraft[] => {
    const sure = judges.usage(usageSigns(ground, choice, choices), choice);
    const { value: count, what: unit } = choice;
    return sure < EVEN
      ? []
      : [draft(scan, choice, { count, unit, date: dateNear(scan, choice, today) }, sure, choice.rule)];
  });
  const readings = fixed.amounts.flatMap((amount): UsageDraft[] => {
    const unit = unitOfReading(scan, amount);
    const reading = { reading: amount.value, unit, date: today };
    return amount.what === "reading" && fixed.dead[amount.from] !== 1
      ? [draft(scan, amount, reading, READING_SURE, "meter-reading")]
      : [];
  });
  return [...used, ...readings].toSorted((a, b) => a.span.start - b.span.start);
};
