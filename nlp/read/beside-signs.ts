import { type Candidate, sureOf } from "./candidate.ts";
import { sameAs } from "./same-record.ts";
import type { Setting } from "./setting.ts";
import { sizeOf } from "./sizes.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

export type Candidates = readonly Candidate[];

const FIFTHS = 5;
export const fifths = (sure: number): string => String(Math.min(FIFTHS - 1, Math.floor(sure * FIFTHS)));

const FAR = 20;
/** How far apart two candidates are told, as a word. */
export const placesApart = (a: Candidate, b: Candidate): string => {
  const words = Math.abs(a.telling.at - b.telling.at);
  if (words <= 12) return String(Math.ceil(words / 2));
  return words <= FAR ? "some" : words <= FAR * 2 ? "many" : "far";
};

export const nearest = (each: Candidate, all: Candidates): Candidate | undefined =>
  all.reduce<Candidate | undefined>(
    (best, other) =>
      best === undefined ||
      Math.abs(other.telling.at - each.telling.at) < Math.abs(best.telling.at - each.telling.at)
        ? other
        : best,
    undefined,
  );

/** Words between two places that tell whether the later one goes on or begins anew. */
const CUES = listed("besideCues");

const cuesBetween = ({ scan }: Setting, from: number, to: number): string[] => {
  const between = scan.tokens.slice(from + 1, Math.min(to, from + FAR)).map(({ norm }) => norm);
  return [...new Set(between.filter((word) => CUES.has(word)))];
};

const actionsOf = (one: Candidate, other: Candidate): string => {
  const [a, b] = [one.telling.deed, other.telling.deed];
  return a === undefined || b === undefined ? "open" : a.action === b.action ? "one" : "two";
};

/** Whether the rules make one piece of work of both. */
const workOf = ({ recordOf }: Setting, first: Candidate, later: Candidate): string => {
  const one = first.telling.deed && recordOf.get(first.telling.deed);
  if (one === undefined) return "unruled";
  return String(later.telling.deed !== undefined && one === recordOf.get(later.telling.deed));
};

/** The signs, as names, of how a candidate stands to another one: which is told first and is surer, and what is told between them. */
export const besideSigns = (
  name: string,
  setting: Setting,
  each: Candidate,
  other: Candidate | undefined,
): string[] => {
  if (other === undefined) return [`${name}=none`];
  const [first, later] = other.telling.at < each.telling.at ? [other, each] : [each, other];
  const [from, to] = [first.telling.at, later.telling.at];
  const { scan, index } = setting;
  const at = `${name}=${first === other ? "before" : "after"} ${sureOf(other) > sureOf(each) ? "surer" : "less"}`;
  const kinds = `${other.kind} ${each.kind}`;
  const clauses = sizeOf((index[to] ?? 0) - (index[from] ?? 0));
  const known = `${String(other.telling.deed !== undefined)} ${String(each.telling.deed !== undefined)}`;
  const mention = other.ref.from === each.ref.from ? "one" : "two";
  const distance = placesApart(each, other);
  const actions = actionsOf(each, other);
  const same = String(sameAs(setting, each, other));
  const cues = cuesBetween(setting, from, to);
  return [
    at,
    `${at} ${kinds}`,
    `${at} apart ${distance}`,
    `${at} clauses ${clauses}`,
    `${at} known ${known}`,
    `${at} mention ${mention}`,
    `${at} actions ${actions}`,
    `${at} times ${sizeOf(startingIn(scan.times, from, to).length)}`,
    `${at} verdicts ${sizeOf(startingIn(scan.verdicts, from, to).length)}`,
    `${at} faults ${sizeOf(startingIn(scan.faults, from, to).length)}`,
    `${at} work ${workOf(setting, first, later)}`,
    `${at} same ${same}`,
    `${at} sure ${fifths(sureOf(other))}`,
    `${at} ${kinds} apart ${distance}`,
    `${at} ${kinds} mention ${mention}`,
    `${at} ${kinds} known ${known}`,
    `${at} ${kinds} same ${same}`,
    `${at} mention ${mention} apart ${distance}`,
    `${at} mention ${mention} clauses ${clauses}`,
    `${at} known ${known} apart ${distance}`,
    `${at} same ${same} sure ${fifths(sureOf(each))}`,
    `${at} ${kinds} actions ${actions} mention ${mention}`,
    ...cues.map((cue) => `${at} cue ${cue}`),
    ...cues.map((cue) => `${at} ${kinds} cue ${cue}`),
  ];
};
