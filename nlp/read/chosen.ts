import { KINDS, type Kind } from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import { aimSigns, aimsOf } from "./aim-signs.ts";
import { describingSigns, withDescribed } from "./described.ts";
import { wordAt } from "./ground.ts";
import type { Judges } from "./judges.ts";
import { noteSigns } from "./note-signs.ts";
import { looksPast } from "./past.ts";
import type { Setting } from "./setting.ts";
import { tellingSigns } from "./telling-signs.ts";
import { type Telling, tellingsOf } from "./tellings.ts";
import { coordinated } from "./topics.ts";
import { startingIn } from "./windows.ts";
import { AUXILIARIES } from "./words.ts";

/** One record to be written down: where it is told, of what kind, and of which mention. */
export type Chosen = {
  readonly telling: Telling;
  readonly kind: Kind;
  readonly ref: ComponentRef;
  readonly sureKind: number;
  readonly sureAim: number;
};

/** What is told at a place and of which thing are as sure as this together, in a note that is likely to tell anything. */
const ENOUGH = 0.2;
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

/** Below this, words that name nothing speak of nothing, though it is the likeliest. */
const PLAIN_ENOUGH = 0.3;

type Rated = { readonly telling: Telling; readonly kind: Kind; readonly sure: number };

const rated = (setting: Setting, telling: Telling, judges: Judges): Rated => {
  const chances = judges.kind(tellingSigns(setting, telling), telling, setting);
  const kind = KINDS.reduce((best, each) => (chances[each] > chances[best] ? each : best));
  return { telling, kind, sure: chances[kind] };
};

/** As far before a thing, in words, as what was done to it may be told. */
const DONE_TO = 6;

/** "Cleaned the filter of the air con, and the ladder was hanging": the later one begins what is told next. */
const opensAnother = ({ scan, deeds }: Setting, first: ComponentRef, later: ComponentRef): boolean =>
  AUXILIARIES.has(wordAt(scan, later.to)) &&
  startingIn(deeds, first.from - DONE_TO, first.from).some(({ at }) => at < first.from);

/** Named in one breath with the mention chosen: "the smoke alarm and the gas alarm both went off". */
const partnersOf = (
  setting: Setting,
  telling: Telling,
  ref: ComponentRef,
  aims: readonly ComponentRef[],
): ComponentRef[] =>
  aims.filter((each) => {
    if (each.id === ref.id || ref.described !== undefined || each.weak) return false;
    const [first, later] = each.from < ref.from ? [each, ref] : [ref, each];
    if (telling.deed === undefined && telling.at > first.from && telling.at < later.to) return false;
    return coordinated(setting, first, later) && !opensAnother(setting, first, later);
  });

const choose = (setting: Setting, { telling, kind, sure }: Rated, judges: Judges): Chosen[] => {
  if (sure < ENOUGH) return [];
  const described = judges.described(describingSigns(setting.scan.tokens, telling.at));
  const aims = withDescribed(aimsOf(setting, telling), described, telling);
  if (aims.length === 0) return [];
  const parts = judges.aim(
    aims.map((ref) => aimSigns(setting, telling, ref, aims, described)),
    telling,
    aims,
  );
  const best = aims.reduce((top, _, at) => ((parts[at] ?? 0) > (parts[top] ?? 0) ? at : top), 0);
  const ref = aims[best];
  if (ref === undefined || (ref.described ?? 1) < PLAIN_ENOUGH) return [];
  const sureAim = aims.reduce((sum, each, at) => (each.id === ref.id ? sum + (parts[at] ?? 0) : sum), 0);
  if (sure * sureAim < ENOUGH) return [];
  return [ref, ...partnersOf(setting, telling, ref, aims)]
    .sort((a, b) => a.from - b.from)
    .map((each) => ({ telling, kind, ref: each, sureKind: sure, sureAim }));
};

/** Places as near as this, in words, tell the same of one thing; a little further still when one has no known verb. */
const NEAR = 5;
const NEARLY = 11;

/** The rules make one piece of work of both deeds, and the judges are less than sure of one. */
const inOneWork = ({ recordOf }: Setting, a: Chosen, b: Chosen): boolean => {
  if (a.telling.deed === undefined || b.telling.deed === undefined) return false;
  const made = recordOf.get(a.telling.deed);
  return (
    made !== undefined &&
    made === recordOf.get(b.telling.deed) &&
    Math.min(a.sureKind, b.sureKind) < QUITE_SURE
  );
};
const QUITE_SURE = 0.8;

/** "Checked the smoke alarm and the gas alarm": words that only name a thing, of which something was told before. */
const onlyNames = ({ scan }: Setting, { telling: { at, deed } }: Chosen): boolean =>
  deed === undefined &&
  !looksPast(wordAt(scan, at)) &&
  !wordAt(scan, at).endsWith("ing") &&
  startingIn(scan.verdicts, at, at + 1).length === 0 &&
  startingIn(scan.faults, at, at + 1).length === 0;

const sameAs = (setting: Setting, a: Chosen, b: Chosen): boolean => {
  if (a.telling === b.telling || a.ref.id !== b.ref.id) return false;
  const apart = Math.abs(a.telling.at - b.telling.at);
  if (a.ref.from === b.ref.from && apart <= NEARLY && (onlyNames(setting, a) || onlyNames(setting, b)))
    return true;
  const known = a.telling.deed !== undefined && b.telling.deed !== undefined;
  if (known && a.kind === b.kind) return a.telling.clause === b.telling.clause || inOneWork(setting, a, b);
  if (known) return false;
  return apart <= NEAR || (apart <= NEARLY && a.kind === b.kind);
};

/** As far ahead and back in the list as the same may be told again. */
const AROUND = 8;

/** What a note tells, in order; nothing when it is not likely to tell anything, and how likely it is, in log odds. */
export const chosenIn = (
  setting: Setting,
  judges: Judges,
): { readonly chosen: Chosen[]; readonly likely: number } => {
  const places = tellingsOf(setting.scan, setting.clauses, setting.deeds).map((telling) =>
    rated(setting, telling, judges),
  );
  const surest = places.reduce((most, { sure }) => Math.max(most, sure), 0);
  const likely = logOdds(surest) + OF_NOTE * logOdds(judges.tells(noteSigns(setting.scan)));
  if (likely < (setting.scan.tokens.length <= FEW ? LIKELY_IN_FEW : LIKELY)) return { chosen: [], likely };
  const all = places.flatMap((place) => choose(setting, place, judges));
  const chosen = all.filter(
    (each, at) =>
      !all
        .slice(Math.max(0, at - AROUND), at + AROUND)
        .some(
          (other) =>
            sameAs(setting, other, each) &&
            (other.sureKind > each.sureKind ||
              (other.sureKind === each.sureKind && other.telling.at < each.telling.at)),
        ),
  );
  return { chosen, likely };
};
