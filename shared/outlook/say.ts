import type { Day } from "./days.ts";
import { civilOf } from "./days.ts";

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** "about 1 in 9", "about even", "more likely than not". */
export const chanceWords = (chance: number): string => {
  if (chance < 0.01) return "less than 1 in 100";
  if (chance < 0.45)
    return `about 1 in ${chance < 0.055 ? roundTo(1 / chance, 5) : Math.max(2, Math.round(1 / chance))}`;
  if (chance < 0.55) return "about even odds";
  if (chance < 0.75) return "more likely than not";
  return "very likely";
};

const roundTo = (value: number, step: number) => Math.round(value / step) * step;

const counted = (count: number, unit: string) => `${count} ${unit}${count === 1 ? "" : "s"}`;

/** A stretch of months as one says it: "3 weeks", "8 months", "a year and a half", "4 years". */
export const monthsWords = (months: number): string => {
  if (months < 1.4) return counted(Math.max(1, Math.round(months * 4.35)), "week");
  if (months < 10.5) return counted(Math.round(months), "month");
  if (months < 15) return "a year";
  if (months < 21) return "a year and a half";
  if (months < 30) return "2 years";
  return counted(Math.round(months / 12), "year");
};

/** A range of months, the unit said once where it can be: "8 months to 3 years", "1 to 11 years". */
export const monthsRange = (low: number, high: number): string => {
  const [from, to] = [Math.round(low / 12), Math.round(high / 12)];
  if (low >= 10.5 && to >= 2) return from === to ? `${to} years` : `${from} to ${to} years`;
  return `${monthsWords(low)} to ${monthsWords(high)}`;
};

/** An interval of days as one says it: "every month", "every 6 months". */
export const everyWords = (days: number): string => {
  if (days < 45) return days <= 8 ? "every week" : days <= 29 ? "every four weeks" : "every month";
  if (days < 340) return `every ${Math.round(days / 30.4)} months`;
  return days < 400 ? "every year" : `every ${(days / 365).toFixed(1).replace(".0", "")} years`;
};

/** A round figure for a use: 612 miles → 600, 3.4 fills → 3. */
export const roundUse = (count: number): number => {
  if (count < 15) return Math.max(1, Math.round(count));
  const magnitude = 10 ** Math.floor(Math.log10(count));
  return roundTo(count, magnitude >= 1000 ? magnitude / 4 : magnitude / 2);
};

/** A whole number with its thousands set off: "3,000". */
export const figures = (count: number): string => {
  const digits = String(count);
  return digits.length < 4 ? digits : digits.replace(/\B(?=(?:\d{3})+$)/g, ",");
};

export const useWords = (count: number, unit: string): string => {
  const round = roundUse(count);
  return `${figures(round)} ${round === 1 ? unit.replace(/s$/, "") : unit}`;
};

/** "on 3 June", with the year when it is another one. */
export const dayWords = (day: Day, today: Day): string => {
  const { year, month, date } = civilOf(day);
  const name = MONTHS[month - 1] ?? "";
  if (Math.abs(day - today) > 300) return `in ${name} ${year}`;
  const near = Math.abs(day - today) < 200 || year === civilOf(today).year;
  return `on ${date} ${name}${near ? "" : ` ${year}`}`;
};

/** "a glassed-over repair", "an adjustment". */
export const withArticle = (name: string): string => `${/^[aeiou]/.test(name) ? "an" : "a"} ${name}`;
