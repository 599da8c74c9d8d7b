import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Store } from "../../store/store.ts";
import { draft, keeping, pairedStore, temporaryFolder } from "../help/store.ts";

const withTank = (file?: string): { readonly store: Store; readonly id: number } => {
  const store = pairedStore(file);
  const { keeper, noteId, saidAt } = keeping(store);
  return { store, id: keeper.addRecord(noteId, saidAt, draft({ cost: 24 }), "new") };
};

describe("a record read before", () => {
  it("is not read again while it stands", () => {
    const { store, id } = withTank();
    expect(store.history.record(id)).toBe(store.history.record(id));
    expect(store.history.records({})[0]).toBe(store.history.record(id));
  });

  it("is read anew when it was changed, when a verdict came or went, and when its teller was renamed", () => {
    const { store, id } = withTank();
    const now = () => store.history.record(id);
    const before = now();
    keeping(store).keeper.setField(id, "cost", 42);
    expect([before?.fields.cost, now()?.fields.cost]).toEqual([24, 42]);
    const { keeper, noteId, saidAt } = keeping(store);
    const verdict = { outcome: "holding", when: "2026-05-14", saidAt, exposure: [], noteId } as const;
    keeper.addVerdict(id, verdict);
    expect(now()?.verdicts).toEqual([verdict]);
    store.db.prepare("UPDATE verdicts SET removed = 1").run();
    expect(now()?.verdicts).toEqual([]);
    store.db.prepare("UPDATE people SET name = 'Tomas'").run();
    expect(now()?.saidBy).toBe("Tomas");
  });

  it("is as before a change that was taken back with its transaction", () => {
    const { store, id } = withTank();
    const change = () =>
      store.transact(() => {
        keeping(store).keeper.setField(id, "cost", 42);
        expect(store.history.record(id)?.fields.cost).toBe(42);
        throw new Error("Cut short.");
      });
    expect(change).toThrow("Cut short.");
    expect(store.history.record(id)?.fields.cost).toBe(24);
  });

  it("is as another program that has the file open leaves it", () => {
    const file = join(temporaryFolder(), "holdfast.db");
    const { store, id } = withTank(file);
    expect(store.history.record(id)?.fields.cost).toBe(24);
    const other = pairedStore(file);
    keeping(other).keeper.setField(id, "cost", 42);
    expect(store.history.record(id)?.fields.cost).toBe(42);
  });
});
