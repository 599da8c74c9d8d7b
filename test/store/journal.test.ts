import { describe, expect, it } from "vitest";
import { draft, keeping, pairedStore } from "../help/store.ts";

describe("changes to records", () => {
  it("are kept with what was and what became", () => {
    const store = pairedStore();
    const { keeper, noteId, saidAt } = keeping(store);
    const id = keeper.addRecord(noteId, saidAt, draft(), "new");
    keeper.setField(id, "component", "black-tank");
    expect(keeper.changes().map(({ field, was, became }) => [field, was, became])).toEqual([
      ["removed", 1, 0],
      ["component", "gray-tank", "black-tank"],
    ]);
  });

  it("can be undone, and the undoing undone", () => {
    const store = pairedStore();
    const made = keeping(store);
    const id = made.keeper.addRecord(made.noteId, made.saidAt, draft(), "new");
    const fix = keeping(store);
    fix.keeper.setField(id, "cost", 42);
    const undo = keeping(store);
    undo.keeper.undo(fix.turnId);
    expect(store.history.record(id)?.fields.cost).toBe(24);
    keeping(store).keeper.undo(undo.turnId);
    expect(store.history.record(id)?.fields.cost).toBe(42);
  });

  it("undone, take a new record away without losing it", () => {
    const store = pairedStore();
    const made = keeping(store);
    const id = made.keeper.addRecord(made.noteId, made.saidAt, draft(), "new");
    keeping(store).keeper.undo(made.turnId);
    expect(store.history.records({})).toEqual([]);
    expect(store.history.record(id)).toMatchObject({ removed: true, fields: { component: "gray-tank" } });
  });

  it("leave alone what was changed again since", () => {
    const store = pairedStore();
    const made = keeping(store);
    const id = made.keeper.addRecord(made.noteId, made.saidAt, draft(), "new");
    const first = keeping(store);
    first.keeper.setField(id, "cost", 30);
    keeping(store).keeper.setField(id, "cost", 31);
    const { reversed, kept } = keeping(store).keeper.undo(first.turnId);
    expect([reversed.length, kept.length]).toEqual([0, 1]);
    expect(store.history.record(id)?.fields.cost).toBe(31);
  });

  it("move the day bounds along with the date, also when undone", () => {
    const store = pairedStore();
    const made = keeping(store);
    const id = made.keeper.addRecord(made.noteId, made.saidAt, draft({ date: "2025-22" }), "new");
    const fix = keeping(store);
    fix.keeper.setField(id, "date", "2024-03");
    const inMarch = { from: "2024-03-10", to: "2024-03-11" };
    expect(store.history.records(inMarch).map((each) => each.id)).toEqual([id]);
    keeping(store).keeper.undo(fix.turnId);
    expect(store.history.records(inMarch)).toEqual([]);
    expect(store.history.records({ from: "2025-08-31", to: "2025-09-01" }).map((each) => each.id)).toEqual([
      id,
    ]);
  });

  it("roll back together when one of them fails", () => {
    const store = pairedStore();
    const { keeper, noteId, saidAt } = keeping(store);
    expect(() =>
      store.transact(() => {
        keeper.addRecord(noteId, saidAt, draft(), "new");
        throw new Error("the lights went out");
      }),
    ).toThrow("the lights went out");
    expect(store.history.records({})).toEqual([]);
    expect(keeper.changes()).toEqual([]);
  });
});

describe("a record that took over from another", () => {
  it("taken away, opens the other again as it was", () => {
    const store = pairedStore();
    const first = keeping(store);
    const old = first.keeper.addRecord(first.noteId, first.saidAt, draft({ outcome: "holding" }), "new");
    const second = keeping(store, "it leaked again so I patched it anew");
    const fresh = second.keeper.addRecord(second.noteId, second.saidAt, draft(), old);
    second.keeper.addVerdict(old, {
      outcome: "failed",
      when: "2026-05-14",
      exposure: [],
      noteId: second.noteId,
    });
    second.keeper.close(old, fresh);
    keeping(store).keeper.remove(fresh);
    expect(store.history.record(old)).toMatchObject({
      closedBy: null,
      verdicts: [],
      fields: { outcome: "holding" },
    });
  });
});

describe("settings", () => {
  it("that were never set are unset again by an undo", () => {
    const store = pairedStore();
    const made = keeping(store);
    made.keeper.setSetting("rig.quietFrom", "22");
    keeping(store).keeper.undo(made.turnId);
    expect(store.settings.get("rig.quietFrom")).toBeUndefined();
  });
});

describe("verdicts", () => {
  it("become the record's outcome and stay on record one after the other", () => {
    const store = pairedStore();
    const { keeper, noteId, saidAt } = keeping(store);
    const id = keeper.addRecord(noteId, saidAt, draft(), "new");
    keeper.addVerdict(id, {
      outcome: "holding",
      when: "2026-06-01",
      exposure: [{ count: 3, unit: "trips" }],
      noteId,
    });
    keeper.addVerdict(id, { outcome: "failed", when: "2026-08-01", exposure: [], noteId });
    expect(store.history.record(id)?.fields).toMatchObject({
      outcome: "failed",
      exposure: [{ count: 3, unit: "trips" }],
    });
    expect(store.history.record(id)?.verdicts.map(({ outcome }) => outcome)).toEqual(["holding", "failed"]);
  });
});

describe("an outcome told with the fix", () => {
  it("stays a look of its own when others follow, and goes with them on undo", () => {
    const store = pairedStore();
    const { keeper, noteId, saidAt } = keeping(store);
    const id = keeper.addRecord(noteId, saidAt, draft({ outcome: "holding" }), "new");
    const asked = keeping(store, "it let go");
    asked.keeper.addVerdict(id, { outcome: "failed", when: "2026-08-01", exposure: [], noteId: null });
    expect(store.history.record(id)?.verdicts).toMatchObject([
      { outcome: "holding", when: saidAt.slice(0, 10), saidAt },
      { outcome: "failed", when: "2026-08-01" },
    ]);
    keeping(store).keeper.undo(asked.turnId);
    expect(store.history.record(id)).toMatchObject({ verdicts: [], fields: { outcome: "holding" } });
  });

  it("is no look when nothing was known yet", () => {
    const store = pairedStore();
    const { keeper, noteId, saidAt } = keeping(store);
    const id = keeper.addRecord(noteId, saidAt, draft({ outcome: "untested" }), "new");
    keeper.addVerdict(id, { outcome: "holding", when: "2026-08-01", exposure: [], noteId: null });
    expect(store.history.record(id)?.verdicts).toHaveLength(1);
  });
});

describe("seasons", () => {
  it("move by half a year when the rig crosses the equator", () => {
    const store = pairedStore();
    const { keeper, noteId, saidAt } = keeping(store);
    keeper.addRecord(noteId, saidAt, draft({ date: "2025-22" }), "new");
    const january = { from: "2026-01-10", to: "2026-01-11" };
    expect(store.history.records(january)).toHaveLength(0);
    store.boundDates("south");
    expect(store.history.records(january)).toHaveLength(1);
  });
});
