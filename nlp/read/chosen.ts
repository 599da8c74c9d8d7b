import { type Candidate, sureOf } from "./candidate.ts";
import { candidatesAt } from "./candidates.ts";
import type { Chances, Judges } from "./judges.ts";
import { keptSigns } from "./kept-signs.ts";
import { isLeftOut } from "./muted.ts";
import { noteSigns } from "./note-signs.ts";
import type { Setting } from "./setting.ts";
import { tellingSigns } from "./telling-signs.ts";
import { type Telling, tellingsOf } from "./tellings.ts";
import { deniesTrouble } from "./verdicts.ts";
import { touching } from "./windows.ts";

/** One record to be written down. */
export type Chosen = Candidate;

/** What is likely, in log odds; less in a note of so few words, marks too: those who say little say what they did. */
const LIKELY = 0.9;
const LIKELY_IN_FEW = -0.6;
const FEW = 40;
/** How much the words of the whole note count beside its surest place. */
const OF_NOTE = 0.5;

const MOST_SURE = 0.999;
const logOdds = (sure: number): number => {
  const within = Math.min(MOST_SURE, Math.max(1 - MOST_SURE, sure));
  return Math.log(within / (1 - within));
};

/** As sure as this that it is a record of its own, a candidate is written down; surer, where it was hardly likely before. */
const KEPT = 0.36;
const KEPT_UNLIKELY = 0.55;
const UNLIKELY = 0.15;
/** An item of a list of what is wanted is hardly ever told twice. */
const KEPT_ITEM = 0.1;

const isEnough = (each: Candidate, sure: number): boolean => {
  if (each.telling.deed?.item === true) return sure >= KEPT_ITEM;
  return sure >= (sureOf(each) < UNLIKELY ? KEPT_UNLIKELY : KEPT);
};

/** "No longer leaks" tells of a look, and of no trouble. */
const withoutTroublePast = ({ scan }: Setting, { at }: Telling, chances: Chances): Chances => {
  const isPast = touching(scan.verdicts, at, at).some(
    (verdict) => verdict.from <= at && at < verdict.to && deniesTrouble(verdict),
  );
  return isPast ? { ...chances, fault: 0, check: chances.check + chances.fault } : chances;
};

/** At one place just one thing is told, but for those named in one breath. */
const goTogether = (a: Candidate, b: Candidate): boolean => a.leads && b.leads && a.ref.id !== b.ref.id;

/** The candidates that are records of their own, in order; at a place where several are likely, the surest. */
const ownRecords = (all: readonly Candidate[], rate: (each: Candidate) => number): Chosen[] => {
  const rated = all
    .map((each) => ({ each, sure: rate(each) }))
    .filter(({ each, sure }) => isEnough(each, sure));
  const kept = new Map<Candidate["telling"], Candidate[]>();
  for (const { each } of rated.toSorted((a, b) => b.sure - a.sure)) {
    const there = kept.get(each.telling) ?? [];
    if (there.every((other) => goTogether(each, other))) kept.set(each.telling, [...there, each]);
  }
  return all.filter((each) => kept.get(each.telling)?.includes(each));
};

/** What a note tells, in order; nothing when it is not likely to tell anything, and how likely it is, in log odds. */
export const chosenIn = (
  setting: Setting,
  judges: Judges,
): { readonly chosen: Chosen[]; readonly likely: number } => {
  const places = tellingsOf(setting.scan, setting.clauses, setting.deeds)
    .filter(({ at }) => !isLeftOut(setting.muted, at))
    .map((telling) => ({
      telling,
      chances: withoutTroublePast(
        setting,
        telling,
        judges.kind(tellingSigns(setting, telling), telling, setting),
      ),
    }));
  const surest = places.reduce((most, { chances }) => Math.max(most, ...Object.values(chances)), 0);
  const likely = logOdds(surest) + OF_NOTE * logOdds(judges.tells(noteSigns(setting.scan)));
  if (likely < (setting.scan.tokens.length <= FEW ? LIKELY_IN_FEW : LIKELY)) return { chosen: [], likely };
  const all = places.flatMap((place) => candidatesAt(setting, place, judges));
  return { chosen: ownRecords(all, (each) => judges.kept(keptSigns(setting, all, each), each, all)), likely };
};
