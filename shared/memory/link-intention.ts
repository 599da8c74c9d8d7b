import { letGo } from "./attempts.ts";
import type { LinkStep } from "./link-plan.ts";
import { meet, particularsOf } from "./part.ts";
import { newlyTold, retoldOpen } from "./retold.ts";
import { newRecord, verdictOf } from "./steps.ts";
import { type Against, isLive, isOpen, type Told } from "./told.ts";
import { tellsPartly, tellsStill } from "./work.ts";

/** A fault that says a trouble is back is a verdict on the fix that was to cure it. */
const brokenFix = (told: Told, against: Against) => {
  if (against.meant !== undefined && told.draft.fields.kind === "fault") return against.meant;
  const live = against.kept.filter(isLive);
  const about = particularsOf(told.draft.fields, told.words);
  const fits = live.filter((record) => record.fields.outcome !== "failed" && letGo(told, record));
  return fits.find((record) => meet(about, particularsOf(record.fields))) ?? fits[0];
};

/** "One edge has come loose but it still covers": found wrong, but a word on the fix. */
const halfHolding = (told: Told, against: Against): LinkStep | undefined => {
  const { kind, action } = told.draft.fields;
  if (kind !== "fault" || action !== null || !tellsPartly(told.words) || !tellsStill(told.words))
    return undefined;
  const fix = against.kept.find((record) => isLive(record) && record.fields.outcome !== "failed");
  const verdict = verdictOf(told, "partly");
  return fix === undefined || verdict === undefined
    ? undefined
    : { step: "verdict", draft: told.draft, record: fix.id, verdict, fill: {} };
};

export const linkIntention = (told: Told, against: Against): LinkStep => {
  const half = halfHolding(told, against);
  if (half !== undefined) return half;
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
