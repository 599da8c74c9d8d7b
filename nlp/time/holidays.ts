import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import { wordAt } from "./cardinal.ts";
import data from "./holidays.json" with { type: "json" };
import type { SlotRead } from "./pattern.ts";
import type { Reference } from "./reference.ts";
import type { Token } from "./tokens.ts";

const triple = z.tuple([z.number().int(), z.number().int(), z.number().int()]);
const dayRule = z.union([
  z.strictObject({ day: z.tuple([z.number().int(), z.number().int()]) }),
  z.strictObject({ nth: triple, plus: z.number().int().optional() }),
  z.strictObject({ easter: z.number().int() }),
  z.strictObject({ before: triple }),
]);
type DayRule = z.infer<typeof dayRule>;
const schema = z.object({
  about: z.string(),
  holidays: z.array(z.object({ names: z.array(z.string()).min(1), on: z.record(z.string(), dayRule) })),
  daysOff: z.record(z.string(), z.array(z.string())),
});
const holidays = schema.parse(data);

/** A day that comes every year. */
export type Holiday = { readonly on: (year: number) => Temporal.PlainDate };

/** The n-th weekday of a month, ISO weekday; -1 is the last. */
export const nthWeekday = (year: number, month: number, weekday: number, nth: number): Temporal.PlainDate => {
  const first = new Temporal.PlainDate(year, month, 1);
  const offset = (weekday - first.dayOfWeek + 7) % 7;
  if (nth > 0) return first.add({ days: offset + 7 * (nth - 1) });
  const last = first.with({ day: first.daysInMonth });
  return last.subtract({ days: (last.dayOfWeek - weekday + 7) % 7 });
};

/** Western Easter Sunday by the anonymous Gregorian computus (Meeus, Astronomical Algorithms, ch. 8; from memory). */
export const easterSunday = (year: number): Temporal.PlainDate => {
  const a = year % 19;
  const [b, c] = [Math.floor(year / 100), year % 100];
  const g = Math.floor((b - Math.floor((b + 8) / 25) + 1) / 3);
  const h = (19 * a + b - Math.floor(b / 4) - g + 15) % 30;
  const l = (32 + 2 * (b % 4) + 2 * Math.floor(c / 4) - h - (c % 4)) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const n = h + l - 7 * m + 114;
  return new Temporal.PlainDate(year, Math.floor(n / 31), (n % 31) + 1);
};

const weekdayBefore = (day: Temporal.PlainDate, weekday: number): Temporal.PlainDate =>
  day.subtract({ days: (day.dayOfWeek - weekday + 7) % 7 || 7 });

const dayIn = (rule: DayRule, year: number): Temporal.PlainDate => {
  if ("day" in rule) return new Temporal.PlainDate(year, ...rule.day);
  if ("easter" in rule) return easterSunday(year).add({ days: rule.easter });
  if ("before" in rule) {
    const [month, day, weekday] = rule.before;
    return weekdayBefore(new Temporal.PlainDate(year, month, day), weekday);
  }
  const [month, weekday, nth] = rule.nth;
  return nthWeekday(year, month, weekday, nth).add({ days: rule.plus ?? 0 });
};

type Named = { readonly words: readonly string[]; readonly on: Readonly<Record<string, DayRule>> };
const byFirstWord = new Map<string, Named[]>();
for (const { names, on } of holidays.holidays)
  for (const name of names) {
    const words = name.split(" ");
    const first = words[0] ?? "";
    byFirstWord.set(first, [...(byFirstWord.get(first) ?? []), { words, on }]);
  }
/** Words with which the name of a holiday begins, also in the plural. */
export const HOLIDAY_HEADS: readonly string[] = [...byFirstWord.keys()].flatMap((word) => [
  word,
  `${word}s`,
  `${word}es`,
]);
for (const list of byFirstWord.values()) list.sort((a, b) => b.words.length - a.words.length);

const ruleFor = (on: Readonly<Record<string, DayRule>>, region: string): DayRule | undefined =>
  on[region] ?? on[region.slice(0, 2)] ?? on["*"];

const spelled = (tokens: readonly Token[], at: number, words: readonly string[]): boolean =>
  words.every(
    (word, i) => i === 0 || (wordAt(tokens, at + i) !== undefined && tokens[at + i]?.word === word),
  );

/** The holiday named at a token, by the customs of the place. */
export const holidayAt = (
  tokens: readonly Token[],
  at: number,
  { region }: Reference,
): SlotRead<Holiday> | undefined => {
  const named = byFirstWord.get(tokens[at]?.word ?? "")?.find(({ words }) => spelled(tokens, at, words));
  const rule = named && ruleFor(named.on, region);
  if (rule === undefined || named === undefined) return undefined;
  return { value: { on: (year) => dayIn(rule, year) }, next: at + named.words.length };
};

const inPlural = (words: readonly string[]): readonly string[] => [
  ...words.slice(0, -1),
  `${words.at(-1) ?? ""}s`,
];

/** Holidays in the plural: "two Christmases ago", "two memorial days ago". */
export const holidaysAt = (
  tokens: readonly Token[],
  at: number,
  { region }: Reference,
): SlotRead<Holiday> | undefined => {
  const word = tokens[at]?.raw ?? "";
  const single = [word.slice(0, -1), word.slice(0, -2)]
    .flatMap((name) => (word.endsWith("s") ? (byFirstWord.get(name) ?? []) : []))
    .find(({ words }) => words.length === 1);
  const named =
    single ??
    byFirstWord
      .get(tokens[at]?.word ?? "")
      ?.find(({ words }) => words.length > 1 && spelled(tokens, at, inPlural(words)));
  const rule = named && ruleFor(named.on, region);
  return rule && { value: { on: (year) => dayIn(rule, year) }, next: at + named.words.length };
};

/** The days off of a country, any of which "the bank holiday" or "the long weekend" may be. */
export const daysOff = (region: string): readonly Holiday[] =>
  (holidays.daysOff[region.slice(0, 2)] ?? []).flatMap((name) => {
    const named = holidays.holidays.find(({ names }) => names.includes(name));
    const rule = named && ruleFor(named.on, region);
    return rule === undefined ? [] : [{ on: (year: number) => dayIn(rule, year) }];
  });
