import type { Temporal } from "temporal-polyfill";
import { z } from "zod";
import table from "./tables/cure.json" with { type: "json" };

const hours = z
  .tuple([z.number().positive(), z.number().positive()])
  .refine(([low, high]) => low <= high, "The low figure comes first.");
const rowSchema = z.object({
  id: z.string(),
  words: z.array(z.string()).min(1),
  say: z.string(),
  refC: z.number(),
  leastC: z.number(),
  perTen: z.number().min(1).max(3),
  handle: hours,
  load: hours,
  wet: hours,
});
export type Curing = z.infer<typeof rowSchema>;

export const CURES: readonly Curing[] = z
  .object({ about: z.string(), rows: z.array(rowSchema) })
  .parse(table).rows;

const plain = (text: string) => ` ${text.toLowerCase().replace(/[^a-z0-9]+/g, " ")} `;
/** Things with such a name that cure nothing. */
const NEVER_CURES = [" tape ", " cloth ", " butyl ", " grease ", " lube ", " lubricant ", " remover "];

/** How a material cures; undefined when it does not. */
export const cureOf = (material: string): Curing | undefined => {
  const said = plain(material);
  if (NEVER_CURES.some((word) => said.includes(word))) return undefined;
  return CURES.find(({ words }) => words.some((word) => said.includes(` ${word} `)));
};

/**
 * How many times slower it cures at a temperature than at the reference one: the rate changes by the factor `perTen`
 * for each 10 °C (2 is the usual rule of chemistry, van 't Hoff's).
 */
export const slowdown = (perTen: number, refC: number, tempC: number): number =>
  perTen ** ((refC - tempC) / 10);

export const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

export type Ready = {
  readonly material: string;
  /** The careful end of each estimate. */
  readonly handle: Temporal.ZonedDateTime;
  readonly load: Temporal.ZonedDateTime;
  readonly wet: Temporal.ZonedDateTime;
  /** Below the temperature at which it cures at all: the times are not to be trusted. */
  readonly tooCold: boolean;
  readonly explain: string;
};

const roundedHours = (value: number): number => (value < 4 ? Math.ceil(value * 4) / 4 : Math.ceil(value));

const at = (from: Temporal.ZonedDateTime, hoursOn: number) =>
  from.add({ minutes: Math.round(roundedHours(hoursOn) * 60) });

const span = (value: number): string => {
  if (value < 1) return `${Math.ceil((value * 60) / 5) * 5} minutes`;
  if (value < 36) return value < 1.5 ? "an hour" : `${Math.round(value)} hours`;
  return value < 336 ? `${Math.round(value / 24)} days` : `${Math.round(value / 168)} weeks`;
};

const SHEET = "That's a rule of thumb; what the product's own sheet says wins.";

const explain = (curing: Curing, slower: number, tooCold: boolean): string => {
  if (tooCold)
    return `It's too cold for ${curing.say}: below about ${Math.round(curing.leastC * 1.8 + 32)}°F (${curing.leastC}°C) it hardly cures, so warm the spot and start counting then. ${SHEET}`;
  const waits = [
    { hours: curing.handle[1], before: "before you touch it" },
    { hours: curing.load[1], before: "before it carries anything" },
    { hours: curing.wet[1], before: "before it gets wet" },
  ].toSorted((a, b) => a.hours - b.hours);
  const [first, second, third] = waits.map(({ hours, before }) => `${span(hours * slower)} ${before}`);
  return `At that temperature ${curing.say} wants about ${first ?? ""}, ${second ?? ""} and ${third ?? ""}. ${SHEET}`;
};

/**
 * When glued, sealed or laminated work may be used again; undefined when the material does not cure.
 * @param tempC the temperature at the work, in °C
 */
export const readyAgain = (input: {
  readonly material: string;
  readonly applied: Temporal.ZonedDateTime;
  readonly tempC: number;
}): Ready | undefined => {
  const curing = cureOf(input.material);
  if (curing === undefined) return undefined;
  const slower = slowdown(curing.perTen, curing.refC, input.tempC);
  const tooCold = input.tempC < curing.leastC;
  return {
    material: curing.say,
    handle: at(input.applied, curing.handle[1] * slower),
    load: at(input.applied, curing.load[1] * slower),
    wet: at(input.applied, curing.wet[1] * slower),
    tooCold,
    explain: explain(curing, slower, tooCold),
  };
};
