import type { Clause } from "./clauses.ts";
import { wordAt } from "./ground.ts";
import type { Stretch } from "./scan.ts";
import type { Setting } from "./setting.ts";
import { sizeOf } from "./sizes.ts";
import type { Telling } from "./tellings.ts";
import { startingIn } from "./windows.ts";

/** As many words of a neighbouring clause as are looked at, from the near end. */
const NEAREST = 14;

/** The words of the clause before or after, and how it opens. */
const neighbourSigns = (
  { scan }: Setting,
  neighbour: Clause | undefined,
  side: "previous" | "next",
): string[] => {
  if (neighbour === undefined) return [];
  const from = side === "next" ? neighbour.from : Math.max(neighbour.from, neighbour.to - NEAREST);
  const to = side === "previous" ? neighbour.to : Math.min(neighbour.to, neighbour.from + NEAREST);
  const words = new Set(scan.tokens.slice(from, to).map((token) => token.norm));
  return [
    ...[...words].map((word) => `${side} word=${word}`),
    `${side} opener=${wordAt(scan, neighbour.from)}`,
  ];
};

/** As far as cues, in words, are looked for. */
const CUES_WITHIN = 25;
/** As far as the nearest verdict and trouble are looked for. */
const WITHIN = 40;

/** What is hoped, meant, refused or doubted round a place, and how many clauses away. */
const cueSigns = ({ scan, index }: Setting, at: number): string[] => {
  const cues = startingIn(scan.cues, at - CUES_WITHIN, at + CUES_WITHIN);
  const signs = cues.map(({ from, value }) => {
    const away = sizeOf(Math.abs((index[from] ?? 0) - (index[at] ?? 0)));
    return `cue=${value} ${from < at ? "before" : "after"} ${away}`;
  });
  return [...new Set(signs)];
};

/** The nearest verdict and trouble on both sides, and how many clauses away. */
const nearestSigns = ({ scan, index }: Setting, at: number, rule: string): string[] => {
  const told = <T extends Stretch>(name: string, ref: T | undefined, value: (ref: T) => string): string[] => {
    const away = ref === undefined ? "none" : sizeOf(Math.abs((index[ref.from] ?? 0) - (index[at] ?? 0)));
    const sign = `${name}=${ref === undefined ? "none" : value(ref)} ${away}`;
    return [sign, `${sign} rule=${rule}`];
  };
  const outcome = (ref: (typeof scan.verdicts)[number]): string => ref.value.outcome;
  const strength = (ref: (typeof scan.faults)[number]): string => String(ref.value);
  return [
    ...told("verdict before", startingIn(scan.verdicts, at - WITHIN, at).at(-1), outcome),
    ...told("verdict after", startingIn(scan.verdicts, at + 1, at + WITHIN)[0], outcome),
    ...told("fault before", startingIn(scan.faults, at - WITHIN, at).at(-1), strength),
    ...told("fault after", startingIn(scan.faults, at + 1, at + WITHIN)[0], strength),
  ];
};

/** The words around a place, told apart by the side on which they stand. */
const sidedWords = ({ scan }: Setting, at: number, { from, to }: Stretch): string[] =>
  scan.tokens
    .slice(from, to)
    .flatMap(({ norm }, nth) =>
      from + nth === at ? [] : [`${from + nth < at ? "before" : "after"} word=${norm}`],
    );

/** The signs, as names, of what is told around a place: `rule` is what the rules make of the deed there. */
export const contextSigns = (setting: Setting, telling: Telling, window: Stretch, rule: string): string[] => {
  const { at } = telling;
  const clause = setting.index[at] ?? 0;
  return [
    ...neighbourSigns(setting, setting.clauses[clause - 1], "previous"),
    ...neighbourSigns(setting, setting.clauses[clause + 1], "next"),
    ...cueSigns(setting, at),
    ...nearestSigns(setting, at, rule),
    ...sidedWords(setting, at, window),
  ];
};
