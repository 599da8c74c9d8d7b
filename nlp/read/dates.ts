import { Temporal } from "temporal-polyfill";
import type { Moment } from "../../shared/reading.ts";
import type { Edtf } from "../../shared/record.ts";
import type { Build } from "./build.ts";
import type { Clause } from "./clauses.ts";
import { type Deed, isPurchase } from "./deed.ts";
import { lastingOf, sinceDeed } from "./lasting-dates.ts";
import { cleft, goesOn, inOwnClause } from "./own-times.ts";
import { isPastPoint } from "./past-points.ts";
import type { Scan, Stretch, TimeRef } from "./scan.ts";
import { taleTime } from "./tale.ts";
import type { Event, Told } from "./told.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

export type Dated = { readonly edtf: Edtf | null; readonly spans: readonly Stretch[]; readonly rule: string };

/** The civil day on which a note was said, where it was said. */
export const saidDay = ({ said, zone }: Moment): Edtf =>
  Temporal.Instant.from(said).toZonedDateTimeISO(zone).toPlainDate().toString();

const found = (time: TimeRef, rule: string): Dated => ({ edtf: time.time.edtf, spans: [time], rule });

/** Tells of no deed, fault or verdict of its own. */
const isQuiet = (told: Told, clause: Clause): boolean =>
  [told.deeds, told.verdicts, told.faults].every(
    (refs) => !refs.some((ref) => ref.from >= clause.from && ref.from < clause.to),
  );

const THAT_WAS = listed("datesThatWas");
const WAS = new Set(["was", "thats", "were", "twas"]);
const ONWARD = listed("datesOnward");
const AFTERWARDS = 3;
const STRAIGHT_AFTER = 8;

const wordsIn = (scan: Scan, from: number, to: number): string[] =>
  scan.tokens.slice(from, to).map((token) => token.norm);

/** "that was", "this was back", right before a time. */
const saysThatWas = (words: readonly string[]): boolean => {
  const was = words.findLastIndex((word) => WAS.has(word));
  return (
    was >= 0 &&
    words.length - was <= 3 &&
    (words[was] === "thats" || ["that", "this"].includes(words[was - 1] ?? ""))
  );
};

/** "that was end of August", "two weeks ago now": said after the deed in a clause without a deed of its own. */
const afterwards = (
  lastClause: number,
  event: Event,
  times: readonly TimeRef[],
  { scan, clauses, index }: Build,
): TimeRef | undefined => {
  return times.find((time) => {
    const at = index[time.from] ?? 0;
    const clause = clauses[at];
    if (clause === undefined || at <= lastClause || time.from >= event.to) return false;
    const words = wordsIn(scan, clause.from, time.from);
    if (at <= lastClause + STRAIGHT_AFTER && saysThatWas(words)) return true;
    if (at > lastClause + AFTERWARDS) return false;
    const first = scan.tokens[clause.from]?.norm ?? "";
    return (
      ((words.includes("that") || THAT_WAS.has(first)) && words.some((word) => WAS.has(word))) ||
      (clause.from === time.from && clause.to - time.to <= 1)
    );
  });
};

const WHEN = new Set(["when", "while", "whilst", "before", "after", "once", "as"]);
const first = (scan: Scan, clause: Clause): string => scan.tokens[clause.from]?.norm ?? "";
const MOST_TRAILING = 3;
const HEAD = 2;

/** "…, $150, in 2024": told right after the deed, with nothing but remarks between. */
const trailing = (
  lastClause: number,
  told: Told,
  times: readonly TimeRef[],
  { scan, clauses }: Build,
): TimeRef | undefined => {
  for (let at = lastClause + 1; at <= lastClause + MOST_TRAILING; at++) {
    const clause = clauses[at];
    if (clause === undefined || (at > lastClause + 1 && clause.hard)) return undefined;
    const quiet = isQuiet(told, clause) || (at === lastClause + 1 && WHEN.has(first(scan, clause)));
    const mine = startingIn(times, clause.from, clause.to).find(
      (time) => time.to <= clause.to && (quiet || time.from - clause.from <= HEAD),
    );
    const opens = wordsIn(scan, clause.from, mine?.from ?? clause.from)
      .slice(0, HEAD)
      .some((word) => ONWARD.has(word));
    if (mine !== undefined) return opens ? undefined : mine;
    if (!quiet) return undefined;
  }
  return undefined;
};

const NEAR = 3;
const FAR = 9;
/** "Got back from the lake on Sunday." tells when something else was. */
const ABROAD = listed("datesAbroad");

/** "In March the slide stuck, we were at the lake, ...": told before the deed, after what was done before it. */
const beforehand = (
  event: Event,
  earlier: Event | undefined,
  times: readonly TimeRef[],
  told: Told,
  { index, deeds, clauses, scan }: Build,
): TimeRef | undefined => {
  const first = event.deeds[0];
  const last = earlier?.deeds.at(-1);
  const since = Math.min(event.from, (last?.to ?? event.from - 1) + 1);
  const firstClause = first?.clause ?? 0;
  return times.findLast((time) => {
    const at = index[time.from] ?? 0;
    if (time.from < since || at >= firstClause || at <= (last?.clause ?? -1)) return false;
    const { from, to } = clauses[at] ?? { from: 0, to: 0 };
    const parted = clauses.slice(at + 1, firstClause + 1).some((clause) => clause.hard);
    const ours = [told.faults, told.verdicts, told.topic.mentions].some(
      (refs) => startingIn(refs as readonly Stretch[], from, to).length > 0,
    );
    if (parted && !ours && wordsIn(scan, from, to).some((word) => ABROAD.has(word))) return false;
    const between = startingIn(deeds, time.from, first?.from ?? time.from);
    return firstClause - at <= (between.some((deed) => deed.status === "done") ? NEAR : FAR);
  });
};

const FRAME = listed("clausesFrameWords");
const FOLLOWS = new Set(["so", "and", "but"]);

/** "After four hundred k yesterday | the inverter cut out": ends what is said before, where no deed claims it. */
const rightBefore = (event: Event, build: Build): TimeRef | undefined => {
  const { clauses, index, scan } = build;
  const firstClause = event.deeds[0]?.clause ?? 0;
  for (const at of new Set([firstClause, index[event.from] ?? firstClause])) {
    const [clause, next] = [clauses[at - 1], clauses[at]];
    if (clause === undefined || next === undefined || next.hard) continue;
    if (startingIn(build.deeds, clause.from, clause.to).some((deed) => deed.status === "done")) continue;
    const times = startingIn(build.times, clause.from, clause.to).filter((time) =>
      isPastPoint(time, build.today),
    );
    const [front, last] = [times[0], times.at(-1)];
    const leads = wordsIn(scan, clause.from, front?.from ?? 0).every((word) => FRAME.has(word));
    if (front !== undefined && leads && FOLLOWS.has(scan.tokens[next.from]?.norm ?? "")) return front;
    if (last !== undefined && last.to >= clause.to && !saysThatWas(wordsIn(scan, clause.from, last.from)))
      return last;
  }
  return undefined;
};

/** Of several deeds, taking off what was there and buying what goes in date the work least. */
const weight = (deed: Deed): number => Number(deed.sense === "prep") + 2 * Number(isPurchase(deed));

/** The date of a piece of work, or undefined when nothing in its own words gives one. */
export const dateOf = (
  event: Event,
  told: Told,
  earlier: Event | undefined,
  build: Build,
): Dated | undefined => {
  const { today } = build;
  const mine = told.times.filter((time) => isPastPoint(time, today));
  const times = startingIn(mine, event.from, event.to);
  const main = event.deeds.toSorted((a, b) => weight(a) - weight(b));
  const own = firstOf(
    main,
    (deed) => inOwnClause(deed, event.deeds, build) ?? sinceDeed(deed, build) ?? cleft(deed, build),
  );
  if (own !== undefined) return found(own, "in-the-deed");
  const ends = [...new Set(event.deeds.map((deed) => deed.clause))].reverse();
  const that = firstOf(ends, (clause) => afterwards(clause, event, times, build));
  if (that !== undefined) return found(that, "that-was");
  const after = firstOf(ends, (clause) => trailing(clause, told, times, build));
  if (after !== undefined) return found(after, "just-after-the-deed");
  const on = firstOf(main, (deed) => goesOn(deed, build));
  if (on !== undefined) return found(on, "goes-on");
  const before = beforehand(event, earlier, mine, told, build) ?? rightBefore(event, build);
  if (before !== undefined) return found(before, "before-the-deed");
  const tale = taleTime(event, build);
  if (tale !== undefined) return found(tale, "goes-on");
  const lasting = lastingOf(event, told, build);
  return lasting && found(lasting, "lasting");
};

const firstOf = <T, R>(each: readonly T[], find: (one: T) => R | undefined): R | undefined => {
  for (const one of each) {
    const hit = find(one);
    if (hit !== undefined) return hit;
  }
  return undefined;
};
