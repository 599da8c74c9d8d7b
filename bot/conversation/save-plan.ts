import type { LineId, NoteId, RecordId } from "../../shared/history.ts";
import type { Keep, LinkPlan, LinkStep, Ref } from "../../shared/memory/link-plan.ts";
import type { Draft } from "../../shared/reading.ts";
import { RECORD_FIELDS, type RecordFields } from "../../shared/record.ts";
import type { Keeper } from "../../store/keeper.ts";

export type Saved = {
  readonly record: RecordId;
  readonly draft: Draft;
  readonly how: "new" | "word-on-old" | "retold";
  /** Set when it was unclear which record is meant. */
  readonly unclear: Extract<LinkStep, { step: "ask" }> | null;
};

type Note = { readonly id: NoteId; readonly saidAt: string };

const setAll = (keeper: Keeper, record: RecordId, fields: Partial<RecordFields>): void => {
  for (const field of RECORD_FIELDS) {
    const value = fields[field];
    if (value !== undefined) keeper.setField(record, field, value);
  }
};

/** Writes a plan down. References between drafts of one note are resolved as the records come into being. */
export const savePlan = (plan: LinkPlan, note: Note, keeper: Keeper): readonly Saved[] => {
  const ids: RecordId[] = [];
  const lines = new Map<number, LineId>();
  const resolve = (ref: Ref): RecordId | undefined => ("record" in ref ? ref.record : ids[ref.draft]);

  const lineOf = (line: Keep["line"]): LineId | "new" => {
    if (line === null) return "new";
    return "id" in line ? line.id : (lines.get(line.draft) ?? "new");
  };

  const keep = (step: Keep, index: number): RecordId => {
    const line = lineOf(step.line);
    const id = keeper.addRecord(note.id, note.saidAt, step.draft, line);
    lines.set(index, line === "new" ? id : line);
    return id;
  };

  const saved = plan.map((step, index): Saved => {
    const done = saveStep(step, index);
    ids.push(done.record);
    return done;
  });

  function saveStep(step: LinkStep, index: number): Saved {
    const { draft } = step;
    switch (step.step) {
      case "keep":
        return { record: keep(step, index), draft, how: "new", unclear: null };
      case "ask":
        return { record: keep(step.otherwise, index), draft, how: "new", unclear: step };
      case "verdict":
        setAll(keeper, step.record, step.fill);
        keeper.addVerdict(step.record, { ...step.verdict, noteId: note.id });
        return { record: step.record, draft, how: "word-on-old", unclear: null };
      case "same":
        setAll(keeper, step.record, step.fill);
        return {
          record: step.record,
          draft,
          how: Object.keys(step.fill).length > 0 ? "word-on-old" : "retold",
          unclear: null,
        };
    }
  }

  plan.forEach((step, index) => {
    const own = ids[index];
    const kept = step.step === "keep" ? step : step.step === "ask" ? step.otherwise : undefined;
    if (own === undefined || kept === undefined) return;
    for (const { on, verdict } of kept.verdicts) {
      const record = resolve(on);
      if (record !== undefined) keeper.addVerdict(record, { ...verdict, noteId: note.id });
    }
    for (const ref of [...kept.closes, ...(kept.supersedes === null ? [] : [kept.supersedes])]) {
      const record = resolve(ref);
      if (record !== undefined && record !== own) keeper.close(record, own);
    }
  });
  return saved;
};
