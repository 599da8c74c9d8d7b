import { followedOn, letGo } from "./attempts.ts";
import type { Keep, LinkStep, Ref } from "./link-plan.ts";
import { comparePlaces } from "./place.ts";
import { retoldRepairs } from "./retold.ts";
import { settledBy } from "./settles.ts";
import { askWhich, inDifferentPlaces, newRecord, refOf, retell, retoldBefore, verdictOf } from "./steps.ts";
import { type Against, isLive, isOpen, type Told } from "./told.ts";

/** The attempt just before, told in the same note. */
const attemptBefore = (told: Told, before: readonly LinkStep[]): number | undefined => {
  const { component, where } = told.draft.fields;
  const at = before.findLastIndex(
    ({ draft: { fields } }) =>
      fields.kind === "repair" &&
      fields.component === component &&
      comparePlaces(fields.where, where) !== "different",
  );
  return at >= 0 && before[at]?.draft.fields.outcome === "failed" ? at : undefined;
};

const failed = (told: Told, on: Ref): Keep["verdicts"] => {
  const verdict = verdictOf(told, "failed");
  return verdict === undefined
    ? []
    : [{ on, verdict: { ...verdict, when: told.draft.fields.date ?? verdict.when, exposure: [] } }];
};

const lineOf = (
  told: Told,
  against: Against,
  before: number | undefined,
): Pick<Keep, "line" | "supersedes" | "verdicts"> => {
  const step = before === undefined ? undefined : against.before[before];
  if (before !== undefined && step !== undefined) {
    const on = refOf(step, before);
    const kept = against.kept.find((record) => "record" in on && record.id === on.record);
    return { line: kept === undefined ? { draft: before } : { id: kept.line }, supersedes: on, verdicts: [] };
  }
  const earlier = followedOn(told, against.kept.filter(isLive));
  if (earlier === undefined) return { line: null, supersedes: null, verdicts: [] };
  const on = { record: earlier.id };
  const news = letGo(told, earlier) && earlier.fields.outcome !== "failed";
  return { line: { id: earlier.line }, supersedes: on, verdicts: news ? failed(told, on) : [] };
};

/** New work: what it follows on, and what it deals with. */
const newWork = (told: Told, against: Against): Keep => {
  const settled = settledBy(told, against.kept.filter(isOpen));
  return newRecord(told, {
    ...lineOf(told, against, attemptBefore(told, against.before)),
    closes: settled.map((record) => ({ record: record.id })),
  });
};

export const linkRepair = (told: Told, against: Against): LinkStep => {
  if (against.meant !== undefined) return retell(told, against.meant);
  const taken = retoldBefore(against.before);
  const again = retoldRepairs(told, against.kept).filter((record) => !taken.has(record.id));
  const best = again[0];
  if (best === undefined) return newWork(told, against);
  if (again.length > 1 && inDifferentPlaces(again)) {
    return askWhich(told, again, newWork(told, against), (record) => retell(told, record));
  }
  return retell(told, best);
};
