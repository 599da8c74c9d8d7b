import type { UsageDraft } from "../../shared/reading.ts";
import { spokenNumber } from "../time/index.ts";
import data from "./runs.json" with { type: "json" };
import type { Scan } from "./scan.ts";

const anyOf = (phrases: readonly string[]): string => `(?:${phrases.join("|")})`;
const lead = `(?:${anyOf(data.lead)} )*`;
const named = (things: readonly string[]): string => `(?:${anyOf(data.of)} )*${anyOf(things)}`;
const COUNT = "(once|twice|thrice|.+? (?:times|x))";

/** "Ran the slide in and out twice", "slide cycled twice"; "filled the fresh tank three times". */
const RUNS = [
  ["cycles", `${lead}(?:${anyOf(data.ran)} )?${named(data.slides)} ${anyOf(data.goes)} ${COUNT}`],
  ["cycles", `${lead}cycled ${named(data.slides)} ${COUNT}`],
  ["fills", `${lead}${anyOf(data.fill)} ${named(data.tanks)} ${COUNT}`],
].map(([unit, told]) => ({ unit: unit as "cycles" | "fills", told: new RegExp(`^${told ?? ""}$`) }));

const ONE_WORD: ReadonlyMap<string, number> = new Map([
  ["once", 1],
  ["twice", 2],
  ["thrice", 3],
]);

const countOf = (said: string): number | undefined => ONE_WORD.get(said) ?? spokenNumber(said);

const SURE = 0.9;

/** The words of a note but for the times that it names. */
const plainly = ({ tokens, times }: Scan): string =>
  tokens
    .filter(({ kind }, at) => kind !== "mark" && !times.some(({ from, to }) => from <= at && at < to))
    .map(({ norm }) => norm)
    .join(" ");

/** How often a slide or an awning was run, or the fresh tank filled, where a note tells nothing else: use of the rig. */
export const runsTold = (scan: Scan, today: string): UsageDraft | undefined => {
  const words = plainly(scan);
  for (const { unit, told } of RUNS) {
    const count = countOf(told.exec(words)?.[1] ?? "");
    if (count === undefined) continue;
    const date = scan.times.find(({ time }) => time.direction !== "future")?.time.edtf ?? today;
    return {
      usage: { count, unit, date },
      span: { start: 0, end: scan.text.length },
      sure: SURE,
      rule: "runs",
    };
  }
  return undefined;
};
