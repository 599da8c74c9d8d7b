import { isCure } from "../../shared/memory/work.ts";
import type { Draft } from "../../shared/reading.ts";
import type { Edtf, RecordFields } from "../../shared/record.ts";

/** Whether the later of two accounts does over, on the day of speaking, what was done before that day. */
const doesOver = (earlier: RecordFields, later: RecordFields, today: Edtf): boolean =>
  later.kind === "repair" &&
  later.component === earlier.component &&
  later.where === earlier.where &&
  isCure(later.action) &&
  later.date === today &&
  earlier.date !== today;

/** "That butyl is finished, so I sealed it with ..." : what is done over in the same note has let go, however that is told. */
export const redone = (drafts: readonly Draft[], today: Edtf): Draft[] =>
  drafts.map((draft, at) => {
    const { fields } = draft;
    const isOver =
      fields.kind === "repair" &&
      fields.outcome !== "failed" &&
      isCure(fields.action) &&
      drafts.slice(at + 1).some((later) => doesOver(fields, later.fields, today));
    return isOver
      ? {
          ...draft,
          fields: { ...fields, outcome: "failed" },
          evidence: { ...draft.evidence, outcome: { spans: [draft.span], sure: 0.9, rule: "done-over" } },
        }
      : draft;
  });
