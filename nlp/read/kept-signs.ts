import { besideSigns, type Candidates, fifths, nearest, placesApart } from "./beside-signs.ts";
import { type Candidate, sureOf } from "./candidate.ts";
import { clauseAt, wordAt } from "./ground.ts";
import type { Setting } from "./setting.ts";
import { sizeOf } from "./sizes.ts";

const TENTHS = 10;
const tenths = (sure: number): string => String(Math.min(TENTHS - 1, Math.floor(sure * TENTHS)));

/** As far on both sides, in words, as other candidates count. */
const AROUND = 80;
/** Others less sure than this say little. */
const LIKELY_ENOUGH = 0.15;
const NONE = "none";

const strengthOf = ({ ref }: Candidate): string => {
  if (ref.described !== undefined) return "described";
  if (ref.guessed !== undefined) return "guessed";
  return ref.weak ? "weak" : "named";
};

/** The other candidates round one: of the same thing, those of them that are surer, and of other things. */
const others = (all: Candidates, each: Candidate) => {
  const { telling, ref } = each;
  const around = all.filter((other) => other !== each && Math.abs(other.telling.at - telling.at) <= AROUND);
  const elsewhere = around.filter((other) => other.telling !== telling && sureOf(other) >= LIKELY_ENOUGH);
  const mine = elsewhere.filter((other) => other.ref.id === ref.id);
  return {
    mine,
    surer: mine.filter((other) => sureOf(other) > sureOf(each)),
    rest: elsewhere.filter((other) => other.ref.id !== ref.id && other.leads),
    partners: around.filter((other) => other.telling === telling).length,
  };
};

/** What else may be told at the same place. */
const rivalSigns = (all: Candidates, each: Candidate, sure: string): string[] => {
  const { kind, ref, telling } = each;
  const strength = strengthOf(each);
  const rivals = all.filter(
    (other) => other !== each && other.telling === telling && !(other.leads && each.leads),
  );
  const rival = rivals.toSorted((a, b) => sureOf(b) - sureOf(a))[0];
  if (rival === undefined) return [`against=${NONE}`, `against=${NONE} sure=${sure}`];
  const apart = rival.kind === kind ? "thing" : rival.ref.id === ref.id ? "kind" : "both";
  const against = `against=${apart} ${sureOf(rival) > sureOf(each) ? "surer" : "less"}`;
  const kinds = `kinds=${rival.kind} ${kind}`;
  return [
    against,
    `${against} sure=${sure}`,
    `${against} rival=${tenths(sureOf(rival))}`,
    `${against} ${kinds}`,
    `${against} strength=${strength} ${strengthOf(rival)}`,
    `${against} sure=${fifths(sureOf(each))} rival=${fifths(sureOf(rival))} ${kinds}`,
  ];
};

/** What the rules make of the thing, and of the place. */
const rulingOf = ({ ruled, recordOf, bareIn }: Setting, { telling, kind, ref }: Candidate) => {
  const ofIt = ruled.filter((made) => made.told.topic.component === ref.id);
  const alike = sizeOf(ofIt.filter((made) => made.kind === kind).length);
  const here = telling.deed === undefined ? bareIn.get(telling.clause) : recordOf.get(telling.deed);
  const place =
    here === undefined
      ? NONE
      : `${here.kind === kind ? "kind" : "other"} ${here.told.topic.component === ref.id ? "thing" : "other"}`;
  return { alike, ruling: `ruling=${alike} ${sizeOf(ofIt.length)} ${place}` };
};

/** How far away the thing is named, in words. */
const reachOf = ({ index }: Setting, { telling: { at }, ref }: Candidate): string => {
  const ahead = ref.from > at;
  const gap = ahead ? ref.from - at : at - ref.to;
  const size = gap <= 12 ? String(Math.ceil(gap / 3)) : gap <= 40 ? "some" : "far";
  return `reach=${ahead ? "ahead" : "back"} ${size} ${index[ref.from] === index[at] ? "here" : "away"}`;
};

const neighbour = (each: Candidate, other: Candidate | undefined): string =>
  other === undefined
    ? NONE
    : `${other.kind} ${other.ref.id === each.ref.id ? "same" : "else"} ${fifths(sureOf(other))} ${placesApart(each, other)}`;

const neighbourSigns = (all: Candidates, each: Candidate): string[] => {
  const { telling } = each;
  const leaders = all.filter((other) => other.leads && other.telling !== telling);
  const before = leaders.filter((other) => other.telling.at < telling.at).at(-1);
  const after = leaders.find((other) => other.telling.at > telling.at);
  return [`previous=${neighbour(each, before)}`, `next=${neighbour(each, after)}`];
};

/** The signs, as names, that tell whether a candidate is a record of its own: how sure it is, and the others around it. */
export const keptSigns = (setting: Setting, all: Candidates, each: Candidate): string[] => {
  const { telling, kind, ref, sureKind, sureAim, leads, lead } = each;
  const { scan, clauses, named } = setting;
  const { mine, surer, rest, partners } = others(all, each);
  const clause = clauseAt(setting, telling.at);
  const known = telling.deed === undefined ? "open" : "known";
  const strength = strengthOf(each);
  const mentions = sizeOf(named.filter(({ id }) => id === ref.id).length);
  const note = sizeOf(clauses.length);
  const sure = tenths(sureOf(each));
  const fifth = `sure=${fifths(sureOf(each))}`;
  const twins = sizeOf(mine.filter((other) => other.kind === kind).length);
  const surerTwins = sizeOf(surer.filter((other) => other.kind === kind).length);
  const any = `surer=${String(Math.min(1, surer.length))}`;
  const { alike, ruling } = rulingOf(setting, each);
  const reach = reachOf(setting, each);
  const expected = `expected=${sizeOf(Math.round(all.reduce((sum, other) => sum + sureOf(other), 0)))}`;
  return [
    ruling,
    `${ruling} kind=${kind}`,
    `${ruling} ${fifth}`,
    `ruled=${alike} twins=${twins}`,
    `ruled=${alike} surerTwins=${surerTwins} ${fifth}`,
    `twins=${twins} surer=${surerTwins}`,
    `twins=${twins} surer=${surerTwins} kind=${kind} mentions=${mentions}`,
    reach,
    `${reach} strength=${strength}`,
    `${reach} kind=${kind}`,
    `${reach} mine=${sizeOf(mine.length)}`,
    expected,
    `${expected} ${fifth}`,
    ...neighbourSigns(all, each),
    `leads=${String(leads)}`,
    `leads=${String(leads)} sure=${sure}`,
    `leads=${String(leads)} sure=${sure} lead=${fifths(lead)}`,
    ...rivalSigns(all, each, sure),
    `kind=${kind}`,
    `known=${known}`,
    `sure=${sure}`,
    `sure=${sure} kind=${kind}`,
    `sure=${sure} known=${known}`,
    `sure=${sure} strength=${strength}`,
    `sure=${sure} mine=${sizeOf(mine.length)}`,
    `sure=${sure} surer=${sizeOf(surer.length)}`,
    `sure=${sure} note=${note}`,
    `of-kind=${tenths(sureKind)}`,
    `of-kind=${tenths(sureKind)} of-aim=${fifths(sureAim)}`,
    `of-aim=${tenths(sureAim)}`,
    `strength=${strength}`,
    `strength=${strength} kind=${kind}`,
    `mine=${sizeOf(mine.length)}`,
    `mine=${sizeOf(mine.length)} mentions=${mentions}`,
    `surer=${sizeOf(surer.length)}`,
    `partners=${sizeOf(partners)}`,
    `note=${note}`,
    `verb=${wordAt(scan, telling.at)}`,
    `verb=${wordAt(scan, telling.at)} ${any}`,
    `opener=${wordAt(scan, clause.from)} ${any}`,
    `status=${telling.deed?.status ?? NONE} sense=${telling.deed?.sense ?? NONE}`,
    `id=${ref.id}`,
    `id=${ref.id} kind=${kind}`,
    ...besideSigns("before", setting, each, mine.filter((other) => other.telling.at < telling.at).at(-1)),
    ...besideSigns(
      "after",
      setting,
      each,
      mine.find((other) => other.telling.at > telling.at),
    ),
    ...besideSigns("surer", setting, each, nearest(each, surer)),
    ...besideSigns("else", setting, each, nearest(each, rest)),
  ];
};
