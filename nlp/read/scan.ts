import type { Moment } from "../../shared/reading.ts";
import { actsIn } from "../lexicon/acts.ts";
import { type ComponentRef, componentsIn } from "../lexicon/components.ts";
import {
  type ActionEntry,
  CUE_INDEX,
  type Cue,
  FAULT_INDEX,
  SPELLER,
  type VerdictEntry,
} from "../lexicon/lexicon.ts";
import { type MaterialRef, materialsIn } from "../lexicon/materials.ts";
import type { Hit } from "../lexicon/pattern.ts";
import { tokenize } from "../lexicon/spelling.ts";
import type { Token } from "../lexicon/tokens.ts";
import { findNumbers, findTimes, regionOf, type TimeMention } from "../time/index.ts";
import type { Amount, NumberRef } from "./amount.ts";
import { amountsIn } from "./amounts.ts";
import { isNoTrouble } from "./no-trouble.ts";
import { remembered } from "./remembered.ts";
import type { Stretch } from "./stretch.ts";
import { verdictsIn } from "./verdicts.ts";

export type { Stretch } from "./stretch.ts";
export type TimeRef = Stretch & { readonly time: TimeMention };
export type ActRef = Hit<ActionEntry>;

/** Everything recognised in a note, before it is known what belongs to what. */
export type Scan = {
  readonly text: string;
  readonly moment: Moment;
  readonly tokens: readonly Token[];
  readonly components: readonly ComponentRef[];
  readonly acts: readonly ActRef[];
  readonly verdicts: readonly Hit<VerdictEntry>[];
  readonly faults: readonly Hit<number>[];
  readonly cues: readonly Hit<Cue>[];
  readonly materials: readonly MaterialRef[];
  readonly times: readonly TimeRef[];
  readonly amounts: readonly Amount[];
  readonly numbers: readonly NumberRef[];
};

/** Token indices for a stretch of characters. */
export const stretchOf = (tokens: readonly Token[], start: number, end: number): Stretch => {
  let low = 0;
  let high = tokens.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((tokens[middle]?.end ?? 0) <= start) low = middle + 1;
    else high = middle;
  }
  let to = low;
  while (to < tokens.length && (tokens[to]?.start ?? 0) < end) to++;
  return { from: low, to };
};

const overlap = (a: Stretch, b: Stretch): boolean => a.from < b.to && b.from < a.to;

const LEAST_SURE = 0.5;

const YEAR = /^\d{4}$/;
const NOT_OF_DEED = new Set(["expired", "dated", "made", "manufactured", "model", "built"]);
const PRONOUNS = new Set(["it", "that", "this", "them"]);

/** "Dated 2019", "made in March", and not "they made it in March": when a thing was made, and not when anything was done. */
const isOfMaking = (tokens: readonly Token[], from: number): boolean =>
  [3, 2, 1].some(
    (back) =>
      NOT_OF_DEED.has(tokens[from - back]?.norm ?? "") && !PRONOUNS.has(tokens[from - back + 1]?.norm ?? ""),
  );

/** "last summer, twenty twenty four": a year said after a season or month corrects its year. */
const withYears = (times: readonly TimeRef[]): TimeRef[] => {
  const out: TimeRef[] = [];
  for (const time of times) {
    const last = out.at(-1);
    const touches = last !== undefined && time.from - last.to <= 1;
    if (touches && YEAR.test(time.time.edtf) && /^\d{4}-\d{2}(?:-\d{2})?~?$/.test(last.time.edtf)) {
      const edtf = time.time.edtf + last.time.edtf.slice(4);
      out[out.length - 1] = {
        from: last.from,
        to: time.to,
        time: { ...last.time, edtf, span: { start: last.time.span.start, end: time.time.span.end } },
      };
    } else if (
      touches &&
      last.time.edtf.includes("/") &&
      /^\d{4}-\d{2}-\d{2}$/.test(time.time.edtf) &&
      last.time.role === "point" &&
      time.time.role === "point"
    ) {
      out[out.length - 1] = { ...time, from: last.from };
    } else out.push(time);
  }
  return out;
};

const scanned = (text: string, moment: Moment): Scan => {
  const tokens = tokenize(text, SPELLER);
  const times = findTimes(text, moment, { prefer: "past" })
    .filter((time) => time.sure >= LEAST_SURE)
    .map((time) => ({ ...stretchOf(tokens, time.span.start, time.span.end), time }));
  const named = componentsIn(tokens);
  const covers = new Set(
    times.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, at) => from + at)),
  );
  const components = named.filter((ref) => ref.to - ref.from > 1 || !covers.has(ref.from));
  const inComponent = new Set(
    components
      .filter((ref) => ref.to - ref.from > 1)
      .flatMap(({ from, to }) => Array.from({ length: to - from }, (_, at) => from + at)),
  );
  const numbers = findNumbers(text).map((number) => ({
    ...number,
    ...stretchOf(tokens, number.span.start, number.span.end),
  }));
  const materials = materialsIn(tokens, (word) => SPELLER.knows(word));
  /** "Duct tape" is no duct. */
  const inMaterial = new Set(
    materials
      .filter(
        (ref) =>
          ref.to - ref.from > 1 &&
          !components.some((each) => each.to - each.from > 1 && each.from < ref.to && ref.from < each.to),
      )
      .flatMap(({ from, to, group }) => {
        const first = group === "part" || group === "wiring" ? from + 1 : from;
        return Array.from({ length: to - first }, (_, at) => first + at);
      }),
  );
  const keptTimes = withYears(
    times.filter(({ from, to }) => (to - from > 1 || !inComponent.has(from)) && !isOfMaking(tokens, from)),
  );
  const amounts = amountsIn(text, tokens, numbers, keptTimes, regionOf(moment.zone));
  const paid = amounts.filter((amount) => amount.what === "money");
  return {
    text,
    moment,
    tokens,
    components: components.filter((ref) => ref.to - ref.from > 1 || !inMaterial.has(ref.from)),
    acts: actsIn(tokens),
    verdicts: verdictsIn(tokens),
    faults: FAULT_INDEX.all(tokens).filter((fault) => !isNoTrouble(tokens, fault)),
    /** "May 3" leaves nothing open. */
    cues: tokens
      .flatMap((_, at) => CUE_INDEX.at(tokens, at))
      .filter((cue) => cue.to - cue.from > 1 || !covers.has(cue.from)),
    materials,
    times: keptTimes.filter(
      (time) => !paid.some((amount) => overlap(time, amount) || isPriceNow(amount, time, tokens)),
    ),
    amounts,
    numbers,
  };
};

const NOW_AS_TO_PRICE = new Set(["this year", "these days", "this time", "this season"]);
/** "Twenty one dollars this year": what it costs by now, not when it was done. */
const isPriceNow = (paid: Stretch, time: Stretch, tokens: readonly Token[]): boolean =>
  time.from === paid.to &&
  NOW_AS_TO_PRICE.has(
    tokens
      .slice(time.from, time.to)
      .map(({ norm }) => norm)
      .join(" "),
  );

/** Recognises all that the lexicon and the grammar of times know in a text. */
export const scan = remembered(scanned);
