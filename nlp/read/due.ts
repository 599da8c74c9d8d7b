import { findTimes } from "../time/index.ts";
import type { Clause } from "./clauses.ts";
import { type Scan, type Stretch, stretchOf } from "./scan.ts";
import type { Event } from "./told.ts";
import { wordsOf } from "./where.ts";
import { listed } from "./words.ts";

export type Due = { readonly text: string; readonly at: Stretch };

const TRIGGERS = listed("dueTriggers");
const MOST_WORDS = 8;
const REACH = 22;

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
      !["and", "so", "but", "oh", "um", "then", "because"].includes(scan.tokens[end]?.norm ?? "")
    )
      end++;
    if (end - at >= 2)
      return { text: wordsOf(scan, { from: at, to: end }).toLowerCase(), at: { from: at, to: end } };
  }
  return undefined;
};

/** When an intended piece of work is to be done: EDTF, or the trigger in the speaker's words. */
export const dueOf = (
  event: Event,
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
): Due | null => {
  const from = Math.min(...event.deeds.map((deed) => clauses[index[deed.at] ?? 0]?.from ?? deed.from));
  const lastDeed = Math.max(...event.deeds.map((deed) => deed.to));
  const stop =
    clauses.find((clause) => clause.hard && clause.from > lastDeed + 1)?.from ?? scan.tokens.length;
  const to = Math.max(Math.min(event.to, stop, lastDeed + REACH), from + 1);
  const start = scan.tokens[from]?.start ?? 0;
  const piece = scan.text.slice(start, scan.tokens[to - 1]?.end ?? scan.text.length);
  const time = findTimes(piece, scan.moment, { prefer: "future" }).find(
    (each) => each.role === "point" && each.direction !== "past" && each.sure >= 0.5,
  );
  const said = trigger(scan, from, to);
  if (time !== undefined) {
    const at = stretchOf(scan.tokens, start + time.span.start, start + time.span.end);
    if (
      said === undefined ||
      at.from < said.at.from ||
      !["before", "after", "when", "once"].includes(scan.tokens[said.at.from]?.norm ?? "")
    )
      return { text: time.edtf, at };
  }
  return said ?? null;
};
