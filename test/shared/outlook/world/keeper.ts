import { Temporal } from "temporal-polyfill";
import type { KeptRecord, Verdict } from "../../../../shared/history.ts";
import { type Day, dateOf, dayOf } from "../../../../shared/outlook/days.ts";
import { DEFAULT_SETTINGS, type Rig, rigOf } from "../../../../shared/outlook/index.ts";
import type { FixKind } from "../../../../shared/outlook/priors.ts";
import { type Wear, wearOf } from "../../../../shared/outlook/wear.ts";
import { consequenceOf } from "../../../../shared/vocabulary.ts";
import {
  drawLife,
  fieldsOf,
  kindOfWork,
  type Nature,
  placeOf,
  type Trait,
  traitOf,
  WORKS,
  type WorkDone,
} from "./nature.ts";
import type { Policy } from "./policy.ts";
import { pick, type Random, seeded } from "./random.ts";
import { type RigUse, useOfRig } from "./season.ts";

/** A chance that was stated of a rig, and what came of it. */
export type Stated = { readonly rig: number; readonly chance: number; readonly came: boolean };

export type Tally = {
  looks: number;
  /** Looks weighed by what they cost. */
  lookCost: number;
  /** Days failed unnoticed, weighed by consequence. */
  unnoticed: number;
  fixes: number;
  readonly gone: Stated[];
  readonly lasts: Stated[];
};

export const emptyTally = (): Tally => ({
  looks: 0,
  lookCost: 0,
  unnoticed: 0,
  fixes: 0,
  gone: [],
  lasts: [],
});

export type WorldSize = { readonly years: number; readonly places: number };

const FIRST: Day = dayOf(new Temporal.PlainDate(2018, 1, 1));
const TRIP_DAYS = 120;

type Place = {
  readonly work: WorkDone;
  readonly kind: FixKind;
  readonly wear: Wear;
  readonly trait: Trait;
  readonly scale: number;
  readonly random: Random;
  readonly line: number;
  readonly firstFix: Day;
  current: Fix | undefined;
};

type Fix = { index: number; start: Day; lastLook: Day; due: Day; fails: Day; shows: boolean };

const placesOf = (random: Random, nature: Nature, size: WorldSize, seed: number): Place[] => {
  const traits = new Map<string, Trait>();
  const works = WORKS.map((group) => [...group]);
  return Array.from({ length: size.places }, (_, line) => {
    const group = pick(random, works);
    const work = pick(random, group);
    group.splice(group.indexOf(work), 1);
    const kind = kindOfWork(work);
    const trait = traits.get(kind.id) ?? traitOf(random, kind, nature);
    traits.set(kind.id, trait);
    const firstFix = FIRST + Math.floor(random() * 400);
    const own = seeded(seed * 1009 + line);
    return {
      work,
      kind,
      wear: wearOf(work.component),
      trait,
      scale: placeOf(random, kind, nature),
      random: own,
      line,
      firstFix,
      current: undefined,
    };
  });
};

/** The day on which a fix of a known life fails. */
const failDay = (life: number, wear: Wear, start: Day, last: Day, use: RigUse): Day => {
  if (use.age(wear, start, last) < life) return Number.POSITIVE_INFINITY;
  let [low, high] = [start, last];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (use.age(wear, start, middle) < life) low = middle;
    else high = middle;
  }
  return high;
};

const at = (day: Day) => dateOf(day).toString();

/** One rig from its first fix on: nature decides, the keeper tells, the policy says when to look. */
export const runRig = (seed: number, nature: Nature, size: WorldSize, policy: Policy, tally: Tally): void => {
  const random = seeded(seed);
  const days = size.years * 365;
  const last = FIRST + days;
  const use = useOfRig(random, FIRST, days);
  const places = placesOf(random, nature, size, seed);
  const records: KeptRecord[] = [];

  let known: { readonly day: Day; readonly rig: Rig } | undefined;
  const rigOn = (day: Day): Rig => {
    if (known?.day === day) return known.rig;
    const today = at(day);
    const usage = use.log.filter(({ saidAt }) => saidAt.slice(0, 10) <= today);
    const settings = DEFAULT_SETTINGS;
    const rig = rigOf({ usage, trip: null, settings, today: dateOf(day), hemisphere: "north" });
    known = { day, rig };
    return rig;
  };

  const told = (place: Place, fix: Fix, day: Day) => {
    const record = records[fix.index];
    if (record === undefined) throw new Error("The fix was never told.");
    return {
      record,
      line: () => records.filter(({ line }) => line === place.line),
      all: records,
      lastLook: fix.lastLook,
      rig: () => rigOn(day),
    };
  };

  const mend = (place: Place, day: Day) => {
    const life = drawLife(place.random, place.kind, place.trait, place.scale);
    const shows = place.random() >= place.wear.hidden;
    const record: KeptRecord = {
      id: records.length + 1,
      noteId: 0,
      saidAt: `${at(day)}T12:00:00Z`,
      saidBy: "keeper",
      fields: fieldsOf(place.work, at(day)),
      doneBy: null,
      brands: [],
      line: place.line,
      closedBy: null,
      settled: false,
      got: false,
      removed: false,
      verdicts: [],
    };
    records.push(record);
    const fix: Fix = {
      index: records.length - 1,
      start: day,
      lastLook: day,
      due: 0,
      fails: failDay(life, place.wear, day, last, use),
      shows,
    };
    place.current = fix;
    fix.due = policy(told(place, fix, day)).due;
    tally.fixes++;
  };

  const answer = (fix: Fix, day: Day, outcome: Verdict["outcome"]) => {
    const record = records[fix.index];
    if (record === undefined) return;
    const verdict: Verdict = {
      outcome,
      when: at(day),
      saidAt: `${at(day)}T12:00:00Z`,
      exposure: [],
      noteId: null,
    };
    records[fix.index] = {
      ...record,
      fields: { ...record.fields, outcome },
      verdicts: [...record.verdicts, verdict],
      closedBy: outcome === "failed" ? records.length + 1 : null,
    };
  };

  const look = (place: Place, fix: Fix, day: Day) => {
    const { due, outlook } = policy(told(place, fix, day));
    if (due > day) {
      fix.due = due;
      return;
    }
    const consequence = consequenceOf(place.work.component);
    const failed = fix.fails <= day;
    tally.looks++;
    tally.lookCost += DEFAULT_SETTINGS.lookCost[place.wear.access];
    if (outlook !== undefined)
      tally.gone.push({ rig: seed, chance: outlook.goneSinceLastLook, came: failed });
    answer(fix, day, failed ? "failed" : "holding");
    if (failed) {
      tally.unnoticed += (day - fix.fails) * DEFAULT_SETTINGS.dayCost[consequence];
      mend(place, day);
      return;
    }
    fix.lastLook = day;
    const next = policy(told(place, fix, day));
    fix.due = next.due;
    if (next.outlook !== undefined && day + TRIP_DAYS <= last) {
      const trip = { from: dateOf(day), to: dateOf(day + TRIP_DAYS), miles: null };
      tally.lasts.push({ rig: seed, chance: next.outlook.lasts(trip), came: fix.fails > day + TRIP_DAYS });
    }
  };

  for (let day = FIRST; day < last; day++)
    for (const place of places) {
      const fix = place.current;
      if (fix === undefined) {
        if (day >= place.firstFix) mend(place, day);
      } else if (fix.shows && fix.fails <= day) {
        answer(fix, day, "failed");
        mend(place, day);
      } else if (fix.due <= day) look(place, fix, day);
    }
  for (const { current, work } of places)
    if (current !== undefined && current.fails < last)
      tally.unnoticed += (last - current.fails) * DEFAULT_SETTINGS.dayCost[consequenceOf(work.component)];
};
