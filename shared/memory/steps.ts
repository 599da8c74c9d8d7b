import type { KeptRecord, RecordId } from "../history.ts";
import type { Keep, LinkStep, NewVerdict, Ref } from "./link-plan.ts";
import { comparePlaces } from "./place.ts";
import { newlyTold } from "./retold.ts";
import type { Told } from "./told.ts";

export const newRecord = (told: Told, more: Partial<Omit<Keep, "step" | "draft">> = {}): Keep => ({
  step: "keep",
  draft: told.draft,
  line: null,
  closes: [],
  supersedes: null,
  verdicts: [],
  ...more,
});

/** Undefined when the draft says nothing about how it holds. `when` is the day of the look; a failure is dated as told. */
export const verdictOf = (told: Told, outcome = told.draft.fields.outcome): NewVerdict | undefined => {
  if (outcome === null || outcome === "untested") return undefined;
  const { fields } = told.draft;
  const when = fields.kind === "repair" || fields.date === null ? told.today.toString() : fields.date;
  return { outcome, when, saidAt: told.said, exposure: fields.exposure };
};

/** The draft tells again what is kept: a word on it, or nothing new. */
export const retell = (told: Told, record: KeptRecord): LinkStep => {
  const fill = newlyTold(told, record.fields);
  const verdict = verdictOf(told);
  return verdict === undefined
    ? { step: "same", draft: told.draft, record: record.id, fill }
    : { step: "verdict", draft: told.draft, record: record.id, verdict, fill };
};

/** Different pieces of one thing (front and rear slide), when the words don't say which is meant. */
export const inDifferentPlaces = (records: readonly KeptRecord[]): boolean =>
  records.some((one, at) =>
    records
      .slice(at + 1)
      .some((other) => comparePlaces(one.fields.where, other.fields.where) === "different"),
  );

/** The record that a step of the same note made or spoke of. */
export const refOf = (step: LinkStep, index: number): Ref =>
  step.step === "keep" || step.step === "ask" ? { draft: index } : { record: step.record };

/** The records that work told before in the same note tells again; a look at one leaves it open what it was. */
export const retoldBefore = (before: readonly LinkStep[]): ReadonlySet<RecordId> =>
  new Set(
    before.flatMap((step) =>
      (step.step === "verdict" || step.step === "same") && step.draft.fields.kind === "repair"
        ? [step.record]
        : [],
    ),
  );

export const askWhich = (
  told: Told,
  candidates: readonly KeptRecord[],
  otherwise: Keep,
  pick: (record: KeptRecord) => LinkStep,
): LinkStep => ({
  step: "ask",
  draft: told.draft,
  candidates: candidates.map((record) => record.id),
  otherwise,
  picked: candidates.map(pick),
});
