import { findTimes } from "../time/index.ts";
import type { Clause } from "./clauses.ts";
import { type Scan, type Stretch, stretchOf } from "./scan.ts";
import type { Event } from "./told.ts";
import { wordsOf } from "./where.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

export type Due = { readonly text: string; readonly at: Stretch };

const TRIGGERS = listed("dueTriggers");
const MOST_WORDS = 8;
const REACH = 22;
const MOST_BACK = 60;

const BEFORE_SUM = listed("dueBeforeSum");
/** "Before easter maybe | twenty bucks": what it is to cost is no time. */
const isSum = ({ amounts }: Scan, at: number): boolean =>
  startingIn(amounts, at, at + 1).some(({ what }) => what === "money");

const trigger = (scan: Scan, from: number, to: number): Due | undefined => {
  for (let at = from; at < to; at++) {
    const word = scan.tokens[at]?.norm ?? "";
    if (
      !TRIGGERS.has(word) ||
      (word === "next" && !["trip", "time", "stop"].includes(scan.tokens[at + 1]?.norm ?? "")) ||
      word === "if"
    )
      continue;
    let end = at + 1;
    while (
      end < scan.tokens.length &&
      end - at <= MOST_WORDS &&
      !(scan.tokens[end]?.kind === "mark" && scan.tokens[end]?.norm !== "-") &&
      !["and", "so", "but", "oh", "um", "then", "because"].includes(scan.tokens[end]?.norm ?? "") &&
      !isSum(scan, end)
    )
      end++;
    if (isSum(scan, end)) while (end > at && BEFORE_SUM.has(scan.tokens[end - 1]?.norm ?? "")) end--;
    if (end - at >= 2)
      return { text: wordsOf(scan, { from: at, to: end }).toLowerCase(), at: { from: at, to: end } };
  }
  return undefined;
};

/** The first time ahead that is named in a stretch. */
const timeAhead = (scan: Scan, { from, to }: Stretch): Due | undefined => {
  if (startingIn(scan.times, from, to).length === 0) return undefined;
  const start = scan.tokens[from]?.start ?? 0;
  const piece = scan.text.slice(start, scan.tokens[to - 1]?.end ?? scan.text.length);
  const time = findTimes(piece, scan.moment, { prefer: "future" }).find(
    (each) => each.role === "point" && each.direction !== "past" && each.sure >= 0.5,
  );
  return (
    time && {
      text: time.edtf,
      at: stretchOf(scan.tokens, start + time.span.start, start + time.span.end),
    }
  );
};

/** Where what is said of an intention begins and ends: from the clause of its first deed to the end of its sentence. */
const stretchOfPlan = (
  { deeds, to }: Event,
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
): Stretch => {
  const first = Math.min(...deeds.map((deed) => clauses[index[deed.at] ?? 0]?.from ?? deed.from));
  const last = Math.max(...deeds.map((deed) => deed.to));
  let clause = index[last] ?? clauses.length;
  while (
    clause < clauses.length &&
    !(clauses[clause]?.hard === true && (clauses[clause]?.from ?? 0) > last + 1)
  )
    clause++;
  const from = Math.max(first, last - MOST_BACK);
  const stop = clauses[clause]?.from ?? scan.tokens.length;
  return { from, to: Math.max(Math.min(to, stop, last + REACH), from + 1) };
};

/** When an intended piece of work is to be done: EDTF, or the trigger in the speaker's words. */
export const dueOf = (
  event: Event,
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
): Due | null => {
  const stretch = stretchOfPlan(event, scan, clauses, index);
  const time = timeAhead(scan, stretch);
  const said = trigger(scan, stretch.from, stretch.to);
  if (time === undefined) return said ?? null;
  const opener = said === undefined ? "" : (scan.tokens[said.at.from]?.norm ?? "");
  return said === undefined ||
    time.at.from < said.at.from ||
    !["before", "after", "when", "once"].includes(opener)
    ? time
    : said;
};
