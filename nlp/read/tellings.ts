import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import { wordAt } from "./ground.ts";
import { looksPast } from "./past.ts";
import type { Scan, Stretch } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";
import { AUXILIARIES } from "./words.ts";

/** A place in a note at which one record may be told: a deed, or a stretch in which the lexicon knows none. */
export type Telling = Stretch & {
  readonly clause: number;
  readonly at: number;
  readonly deed: Deed | undefined;
};

/** Words between two places that may each tell something. */
const APART = 5;
const BEFORE = 6;
const AFTER = 9;

const starts = (refs: readonly Stretch[], at: number): boolean => startingIn(refs, at, at + 1).length > 0;
const covers = (refs: readonly Stretch[], at: number): boolean =>
  touching(refs, at, at).some((ref) => ref.from <= at && at < ref.to);

/** A word that may be a verb by its form, and is no part of a name or a time: "bearing", "morning". */
const isVerbLike = (scan: Scan, at: number): boolean => {
  const word = wordAt(scan, at);
  return (
    ((looksPast(word) && !AUXILIARIES.has(word)) || word.endsWith("ing")) &&
    !NO_VERBS.has(word) &&
    ![scan.components, scan.materials, scan.times].some((refs) => covers(refs, at))
  );
};
const NO_VERBS = new Set(["thing", "something", "nothing", "anything", "everything", "morning", "evening"]);

const tells = (scan: Scan, at: number): boolean =>
  isVerbLike(scan, at) || starts(scan.verdicts, at) || starts(scan.faults, at);

/** Where else in a clause something may be told, well away from what is known there. */
const openPlaces = (scan: Scan, clause: Clause, busy: readonly number[]): number[] => {
  const places: number[] = [];
  const free = (at: number): boolean => [...busy, ...places].every((other) => Math.abs(other - at) >= APART);
  for (let at = clause.from; at < clause.to; at++) if (tells(scan, at) && free(at)) places.push(at);
  if (places.length === 0 && busy.length === 0) {
    const material = startingIn(scan.materials, clause.from, clause.to)[0]?.from;
    places.push(material ?? Math.min(clause.to - 1, clause.from + 2));
  }
  return places;
};

/** Everywhere that a record may be told, in order. */
export const tellingsOf = (scan: Scan, clauses: readonly Clause[], deeds: readonly Deed[]): Telling[] => {
  const known = deeds.map(
    (deed): Telling => ({
      from: Math.min(deed.from, deed.at),
      to: Math.max(deed.to, deed.at + 1),
      clause: deed.clause,
      at: deed.at,
      deed,
    }),
  );
  const open = clauses.flatMap((clause, index): Telling[] => {
    if (clause.to - clause.from < 2) return [];
    const busy = touching(deeds, clause.from, clause.to)
      .filter((deed) => deed.clause === index)
      .flatMap((deed) => [deed.at, deed.from, deed.to - 1]);
    const places = openPlaces(scan, clause, busy);
    return places.map((at) => ({
      from: Math.max(clause.from, at - BEFORE),
      to: Math.min(clause.to, at + AFTER),
      clause: index,
      at,
      deed: undefined,
    }));
  });
  return [...known, ...open].sort((a, b) => a.at - b.at);
};
