import { Temporal } from "temporal-polyfill";
import type { Draft } from "../../shared/reading.ts";

/** Below this, what gave out may be no work at all but the trouble that led to some. */
const SURELY_WORK = 0.8;

const daysApart = (one: string, other: string): number =>
  Math.abs(Temporal.PlainDate.from(one).until(Temporal.PlainDate.from(other)).days);

const DAY = /^\d{4}-\d{2}-\d{2}$/;
const dayOf = (edtf: string | null): string | undefined => {
  const bare = (edtf ?? "").replace(/[~?%]/g, "");
  return DAY.test(bare) ? bare : undefined;
};

/** A day and the one before: the gust of the night, the tape of the morning. */
const atOneTime = (one: string | null, other: string | null): boolean => {
  const [a, b] = [dayOf(one), dayOf(other)];
  return a !== undefined && b !== undefined && daysApart(a, b) <= 1;
};

/** "This gust put a rip in the awning last night, so I taped it": what seems to be work that gave out led to work. */
const ledTo = ({ fields, evidence }: Draft, next: Draft | undefined): boolean =>
  next !== undefined &&
  fields.kind === "repair" &&
  next.fields.kind === "repair" &&
  fields.outcome === "failed" &&
  fields.cost === null &&
  next.fields.outcome !== "failed" &&
  (evidence.kind?.sure ?? 1) < SURELY_WORK &&
  fields.component === next.fields.component &&
  (next.fields.where === null || fields.where === null || fields.where === next.fields.where) &&
  atOneTime(fields.date, next.fields.date);

/** Without trouble that was taken for work, which the work it led to keeps as its trouble. */
export const withoutTroubleFirst = (drafts: readonly Draft[]): readonly Draft[] =>
  drafts.flatMap((draft, at): Draft[] => {
    if (ledTo(draft, drafts[at + 1])) return [];
    const before = drafts[at - 1];
    if (before === undefined || !ledTo(before, draft)) return [draft];
    const { fault, where } = before.fields;
    return [
      {
        ...draft,
        fields: { ...draft.fields, fault: draft.fields.fault ?? fault, where: draft.fields.where ?? where },
      },
    ];
  });
