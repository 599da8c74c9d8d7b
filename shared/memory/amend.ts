import type { History, KeptRecord, KeptUsage } from "../history.ts";
import type { Moment } from "../reading.ts";
import { amendNumber } from "./amend-number.ts";
import { amendRecord, type Bench, type Outcome } from "./amend-record.ts";
import { targetOf } from "./amend-target.ts";
import type { Amend, Amendment } from "./amendment.ts";
import type { Change, Correction } from "./correction.ts";
import type { Scene } from "./scene.ts";
import { dayOf } from "./when.ts";

const impossible = (why: Extract<Amendment, { is: "impossible" }>["why"]): Amendment => ({
  is: "impossible",
  why,
});

const keyOf = (change: Amend): string =>
  change.do === "set"
    ? `${change.record} ${change.field}`
    : "record" in change
      ? `${change.record} ${change.do}`
      : `use ${change.entry.id}`;

/** Two changes to one field of one record can't both be meant. */
const contradicts = (changes: readonly Amend[]): boolean =>
  new Set(changes.map(keyOf)).size < changes.length ||
  (changes.some((change) => change.do === "remove") && changes.some((change) => change.do === "set"));

const reasonIn = (outcomes: readonly Outcome[]) => outcomes.find((outcome) => typeof outcome === "string");

const changesIn = (outcomes: readonly Outcome[]): readonly Amend[] =>
  outcomes.flatMap((outcome) => (typeof outcome === "string" ? [] : outcome));

const changesFor = (
  records: readonly KeptRecord[],
  usage: readonly KeptUsage[],
  change: Change,
  bench: Bench,
): Outcome => {
  if (change.change === "number") return amendNumber(records, usage, change);
  const each = records.map((record) => amendRecord(record, change, bench));
  const why = changesIn(each).length > 0 ? undefined : reasonIn(each);
  const used: readonly Amend[] =
    change.change === "remove" ? usage.map((entry) => ({ do: "remove-use", entry })) : [];
  return why === undefined ? [...changesIn(each), ...used] : why;
};

const settle = (outcomes: readonly Outcome[]): Amendment => {
  const changes = changesIn(outcomes);
  const why = reasonIn(outcomes);
  if (why !== undefined && (changes.length === 0 || why === "in-the-future")) return impossible(why);
  if (changes.length === 0) return impossible("already-so");
  return contradicts(changes) ? impossible("contradictory") : { is: "amend", changes };
};

/** The changes that a correction makes to what is kept, or why it can't be done. Nothing is changed here. */
export const amend = (correction: Correction, scene: Scene, history: History, moment: Moment): Amendment => {
  const { hemisphere } = moment;
  const target = targetOf({ history, scene, hemisphere }, correction);
  if ("missing" in target) return impossible(target.missing);
  if ("unclear" in target) return { is: "which", candidates: target.unclear.map(({ id }) => id) };
  const { found: records, usage } = target;
  const bench: Bench = { history, hemisphere, today: dayOf(moment) };
  return settle(correction.changes.map((change) => changesFor(records, usage, change, bench)));
};
