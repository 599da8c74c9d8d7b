import type { History, RecordId } from "../history.ts";
import type { Draft, Moment } from "../reading.ts";
import { linkCheck } from "./link-check.ts";
import { linkIntention } from "./link-intention.ts";
import type { LinkPlan, LinkStep } from "./link-plan.ts";
import { linkRepair } from "./link-repair.ts";
import { type Against, keptAbout, type Told, toldOf } from "./told.ts";

const stepFor = (told: Told, against: Against, history: History): LinkStep => {
  switch (told.draft.fields.kind) {
    case "repair":
      return linkRepair(told, against);
    case "check":
      return linkCheck(told, against, history);
    case "fault":
    case "todo":
      return linkIntention(told, against);
  }
};

/**
 * Decides for every draft of one note whether it is new, a word on a record that exists, or told again.
 * `text` is the note's text, which the drafts' spans point into; `about` is the work that it is a word on, where that is
 * known and the note tells of nothing else. Looks up only the things that the note names.
 */
export const link = (
  drafts: readonly Draft[],
  text: string,
  history: History,
  moment: Moment,
  about: RecordId | null = null,
): LinkPlan => {
  const steps: LinkStep[] = [];
  const meant = about === null || drafts.length > 1 ? undefined : history.record(about);
  for (const draft of drafts) {
    const told = toldOf(drafts, draft, text, moment);
    steps.push(stepFor(told, { kept: keptAbout(told, history), before: steps, meant }, history));
  }
  return steps;
};
