import type { History, KeptRecord } from "../history.ts";
import { kinOf } from "./families.ts";
import type { Keep, LinkStep } from "./link-plan.ts";
import { meet, particularsOf } from "./part.ts";
import { comparePlaces } from "./place.ts";
import { settledBy } from "./settles.ts";
import { askWhich, inDifferentPlaces, newRecord, retell, verdictOf } from "./steps.ts";
import { type Against, isLive, isOpen, type Told } from "./told.ts";

/** Said to have been looked at or tested, as against a mere word on how it does. */
const looked = (told: Told): boolean => (told.draft.evidence.action?.spans.length ?? 0) > 0;

const meantBest = (told: Told, live: readonly KeptRecord[]): readonly KeptRecord[] => {
  const about = particularsOf(told.draft.fields, told.words);
  const named = live.filter((record) => meet(about, particularsOf(record.fields)));
  return named.length > 0 ? named : live;
};

/** Neighbouring things count only where the words fit one single fix. */
const kinFix = (told: Told, history: History): readonly KeptRecord[] => {
  const { component, where } = told.draft.fields;
  const about = particularsOf(told.draft.fields, told.words);
  const fits = history
    .records({ components: kinOf(component), kinds: ["repair"], limit: 40 })
    .filter((record) => isLive(record) && comparePlaces(where, record.fields.where) !== "different")
    .filter((record) => meet(about, particularsOf(record.fields)));
  return fits.length === 1 ? fits : [];
};

const fixesMeant = (told: Told, against: Against, history: History): readonly KeptRecord[] => {
  const live = against.kept.filter(isLive);
  return live.length > 0 ? meantBest(told, live) : kinFix(told, history);
};

const keepCheck = (told: Told, against: Against, on: KeptRecord | undefined): Keep => {
  const verdict = verdictOf(told);
  return newRecord(told, {
    line: on === undefined ? null : { id: on.line },
    closes: settledBy(told, against.kept.filter(isOpen)).map((record) => ({ record: record.id })),
    verdicts: on === undefined || verdict === undefined ? [] : [{ on: { record: on.id }, verdict }],
  });
};

export const linkCheck = (told: Told, against: Against, history: History): LinkStep => {
  const meant = against.meant === undefined ? fixesMeant(told, against, history) : [against.meant];
  const best = meant[0];
  const settles = settledBy(told, against.kept.filter(isOpen)).length > 0;
  if (best !== undefined && inDifferentPlaces(meant)) {
    return askWhich(told, meant, keepCheck(told, against, undefined), (record) => retell(told, record));
  }
  if (best === undefined || looked(told) || settles) return keepCheck(told, against, best);
  return retell(told, best);
};
