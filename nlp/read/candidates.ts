import { KINDS } from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import { aimSigns, aimsOf } from "./aim-signs.ts";
import type { Candidate } from "./candidate.ts";
import { withDescribed } from "./described.ts";
import { wordAt } from "./ground.ts";
import type { Chances, Judges } from "./judges.ts";
import type { Setting } from "./setting.ts";
import type { Telling } from "./tellings.ts";
import { coordinated } from "./topics.ts";
import { startingIn } from "./windows.ts";
import { AUXILIARIES } from "./words.ts";

/** What is told at a place and of which thing are as sure as this together. */
const ENOUGH = 0.07;
/** Below this, words that name nothing speak of nothing, though it is the likeliest. */
const PLAIN_ENOUGH = 0.3;

/** How likely each kind is told at a place. */
export type Rated = { readonly telling: Telling; readonly chances: Chances };

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

type Aim = { readonly ref: ComponentRef; readonly sure: number };

/** One item of a list is about what it names itself. */
const ofItem = ({ deed }: Telling, named: ComponentRef[]): ComponentRef[] => {
  if (deed?.item !== true) return named;
  const own = named.filter(
    ({ from, described }) => described === undefined && from >= deed.from && from < deed.to,
  );
  return own.length > 0 ? own : named;
};

/** The things that a place may be about, the likeliest first, each with the mention that it is likeliest told by. */
const aimsAt = (
  setting: Setting,
  telling: Telling,
  judges: Judges,
): { aims: Aim[]; named: ComponentRef[] } => {
  const described = judges.described(setting.scan.tokens, telling.at);
  const named = ofItem(telling, withDescribed(aimsOf(setting, telling), described, telling));
  const parts = judges.aim(
    named.map((ref) => aimSigns(setting, telling, ref, named, described)),
    telling,
    named,
  );
  const best = new Map<string, { ref: ComponentRef; most: number; sure: number }>();
  for (const [at, ref] of named.entries()) {
    if ((ref.described ?? 1) < PLAIN_ENOUGH) continue;
    const part = parts[at] ?? 0;
    const known = best.get(ref.id);
    if (known === undefined) best.set(ref.id, { ref, most: part, sure: part });
    else {
      known.sure += part;
      if (part > known.most) [known.ref, known.most] = [ref, part];
    }
  }
  return { aims: [...best.values()].toSorted((a, b) => b.sure - a.sure), named };
};

/** The records that may be told at a place: of each likely kind and thing, and of those named in one breath with the likeliest. */
export const candidatesAt = (setting: Setting, { telling, chances }: Rated, judges: Judges): Candidate[] => {
  const kinds = KINDS.toSorted((a, b) => chances[b] - chances[a]);
  const [likeliest = "repair"] = kinds;
  if (chances[likeliest] < ENOUGH) return [];
  const { aims, named } = aimsAt(setting, telling, judges);
  const [first] = aims;
  if (first === undefined || chances[likeliest] * first.sure < ENOUGH) return [];
  const partners = partnersOf(setting, telling, first.ref, named);
  const joint = new Set([first.ref.id, ...partners.map(({ id }) => id)]);
  const lead = chances[likeliest] * first.sure;
  const leading = [first.ref, ...partners].map(
    (ref): Candidate => ({
      telling,
      kind: likeliest,
      ref,
      sureKind: chances[likeliest],
      sureAim: first.sure,
      leads: true,
      lead,
    }),
  );
  const others = kinds.flatMap((kind) =>
    aims
      .filter(({ ref, sure }) => chances[kind] * sure >= ENOUGH && (kind !== likeliest || !joint.has(ref.id)))
      .map(
        ({ ref, sure }): Candidate => ({
          telling,
          kind,
          ref,
          sureKind: chances[kind],
          sureAim: sure,
          leads: false,
          lead,
        }),
      ),
  );
  return [...leading, ...others].toSorted((a, b) => a.ref.from - b.ref.from);
};
