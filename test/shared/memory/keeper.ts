import type { KeptRecord, KeptUsage, LineId, NoteId, RecordId, Verdict } from "../../../shared/history.ts";
import type { Amend } from "../../../shared/memory/amendment.ts";
import type { Keep, LinkPlan, LinkStep, NewVerdict, Ref } from "../../../shared/memory/link-plan.ts";
import type { Draft, Hemisphere, UsageDraft } from "../../../shared/reading.ts";
import type { RecordFields } from "../../../shared/record.ts";
import { type Kept, MemoryHistory } from "./memory-history.ts";

export type Saved = {
  readonly made: readonly RecordId[];
  readonly changed: readonly RecordId[];
  readonly usage: readonly KeptUsage[];
};

type Folded = { readonly noteId: NoteId; readonly draft: Draft; readonly before: KeptRecord };

/** Does to a history in memory what plans and amendments say, as the store does; for tests. */
export class Keeper {
  readonly history: MemoryHistory;
  private undone: Kept[] = [];
  private past: Kept[] = [];
  private readonly folded = new Map<RecordId, Folded>();

  constructor(hemisphere: Hemisphere) {
    this.history = new MemoryHistory(hemisphere);
  }

  /** Marks a point that one undo goes back to. */
  mark(): void {
    this.past.push(this.history.kept);
    this.undone = [];
  }

  undo(): boolean {
    const before = this.past.pop();
    if (before === undefined) return false;
    this.undone.push(this.history.kept);
    this.history.kept = before;
    return true;
  }

  redo(): boolean {
    const after = this.undone.pop();
    if (after === undefined) return false;
    this.past.push(this.history.kept);
    this.history.kept = after;
    return true;
  }

  save(plan: LinkPlan, usage: readonly UsageDraft[], noteId: NoteId, saidAt: string, saidBy: string): Saved {
    const ids: RecordId[] = [];
    const changed = new Set<RecordId>();
    for (const step of plan) ids.push(this.saveStep(step, ids, { noteId, saidAt, saidBy }, changed));
    const made = plan.flatMap((step, at) =>
      step.step === "keep" || step.step === "ask" ? [ids[at] ?? 0] : [],
    );
    return {
      made,
      changed: [...changed].filter((id) => !made.includes(id)),
      usage: usage.map((draft) => this.history.addUsage(noteId, saidAt, draft.usage)),
    };
  }

  private saveStep(step: LinkStep, ids: readonly RecordId[], note: Note, changed: Set<RecordId>): RecordId {
    if (step.step === "ask") return this.keep(step.otherwise, ids, note, changed);
    if (step.step === "keep") return this.keep(step, ids, note, changed);
    const before = this.need(step.record);
    this.folded.set(step.record, { noteId: note.noteId, draft: step.draft, before });
    this.change(step.record, step.fill);
    if (step.step === "verdict") this.judge(step.record, step.verdict, note.noteId);
    changed.add(step.record);
    return step.record;
  }

  private keep(step: Keep, ids: readonly RecordId[], note: Note, changed: Set<RecordId>): RecordId {
    const id = this.history.nextId();
    const idOf = (ref: Ref): RecordId => ("record" in ref ? ref.record : (ids[ref.draft] ?? 0));
    this.history.put({
      id,
      ...note,
      fields: step.draft.fields,
      doneBy: step.draft.doneBy,
      brands: step.draft.brands,
      line: this.lineOf(step, ids, id),
      closedBy: null,
      settled: false,
      got: false,
      removed: false,
      verdicts: [],
    });
    for (const { on, verdict } of step.verdicts) {
      this.judge(idOf(on), verdict, note.noteId);
      changed.add(idOf(on));
    }
    for (const ref of [...step.closes, ...(step.supersedes === null ? [] : [step.supersedes])]) {
      this.history.put({ ...this.need(idOf(ref)), closedBy: id });
      changed.add(idOf(ref));
    }
    return id;
  }

  private lineOf(step: Keep, ids: readonly RecordId[], id: RecordId): LineId {
    if (step.line === null) return id;
    return "id" in step.line ? step.line.id : this.need(ids[step.line.draft] ?? 0).line;
  }

  judge(id: RecordId, verdict: NewVerdict, noteId: NoteId | null): void {
    const record = this.need(id);
    const full: Verdict = { ...verdict, noteId };
    this.history.put({
      ...record,
      verdicts: [...record.verdicts, full],
      fields: { ...record.fields, outcome: verdict.outcome },
    });
  }

  settle(id: RecordId): void {
    this.history.put({ ...this.need(id), settled: true });
  }

  private change(id: RecordId, fields: Partial<RecordFields>): void {
    const record = this.need(id);
    this.history.put({ ...record, fields: { ...record.fields, ...fields } });
  }

  amend(changes: readonly Amend[]): readonly RecordId[] {
    return changes.flatMap((change) => this.amendOne(change));
  }

  private amendOne(change: Amend): readonly RecordId[] {
    switch (change.do) {
      case "set":
        this.change(change.record, { [change.field]: change.to });
        return [change.record];
      case "done-by":
        this.history.put({ ...this.need(change.record), doneBy: change.to });
        return [change.record];
      case "remove":
        this.history.put({ ...this.need(change.record), removed: true });
        return [change.record, ...this.reopen(change.record)];
      case "part":
        return this.part(change.record);
      case "join":
        return this.join(change.record, change.into);
      case "use":
        this.history.putUsage({ ...change.entry, usage: change.to });
        return [];
      case "remove-use":
        this.history.dropUsage(change.entry.id);
        return [];
    }
  }

  /** What a removed record had dealt with is open again. */
  private reopen(id: RecordId): readonly RecordId[] {
    const closed = [...this.history.kept.records.values()].filter((record) => record.closedBy === id);
    for (const record of closed) this.history.put({ ...record, closedBy: null });
    return closed.map((record) => record.id);
  }

  private part(id: RecordId): readonly RecordId[] {
    const folded = this.folded.get(id);
    if (folded === undefined) return [];
    this.history.put(folded.before);
    const own = this.history.nextId();
    const { before, draft, noteId } = folded;
    const saidAt = this.history.note(noteId)?.saidAt ?? before.saidAt;
    this.history.put({
      ...before,
      id: own,
      noteId,
      saidAt,
      fields: draft.fields,
      line: own,
      closedBy: null,
      verdicts: [],
    });
    return [id, own];
  }

  private join(id: RecordId, into: RecordId): readonly RecordId[] {
    const record = this.need(id);
    this.history.put({ ...record, removed: true });
    const { outcome, date, exposure } = record.fields;
    if (outcome !== null && outcome !== "untested") {
      this.judge(
        into,
        { outcome, when: date ?? record.saidAt.slice(0, 10), saidAt: record.saidAt, exposure },
        record.noteId,
      );
    }
    return [id, into, ...this.reopen(id)];
  }

  private need(id: RecordId): KeptRecord {
    const record = this.history.record(id);
    if (record === undefined) throw new Error(`No record has the id ${id}.`);
    return record;
  }
}

type Note = { readonly noteId: NoteId; readonly saidAt: string; readonly saidBy: string };
