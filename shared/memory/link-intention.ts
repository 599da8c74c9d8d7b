import { letGo } from "./attempts.ts";
import type { LinkStep } from "./link-plan.ts";
import { meet, particularsOf } from "./part.ts";
import { newlyTold, retoldOpen } from "./retold.ts";
import { newRecord, verdictOf } from "./steps.ts";
import { type Against, isLive, isOpen, type Told } from "./told.ts";

/** A fault that says a trouble is back is a verdict on the fix that was to cure it. */
const brokenFix = (told: Told, against: Against) => {
  const live = against.kept.filter(isLive);
  const about = particularsOf(told.draft.fields, told.words);
  const fits = live.filter((record) => record.fields.outcome !== "failed" && letGo(told, record));
  return fits.find((record) => meet(about, particularsOf(record.fields))) ?? fits[0];
};

export const linkIntention = (told: Told, against: Against): LinkStep => {
  const open = against.kept.filter(isOpen);
  const again = retoldOpen(told, open);
  if (
    again !== undefined &&
    (again.fields.kind === told.draft.fields.kind || told.draft.fields.kind === "fault")
  ) {
    return { step: "same", draft: told.draft, record: again.id, fill: newlyTold(told, again.fields) };
  }
  const broken = brokenFix(told, against);
  const verdict = verdictOf(told, "failed");
  return newRecord(told, {
    line: broken === undefined ? null : { id: broken.line },
    closes: again === undefined ? [] : [{ record: again.id }],
    verdicts: broken === undefined || verdict === undefined ? [] : [{ on: { record: broken.id }, verdict }],
  });
};
