import { describe, expect, it } from "vitest";
import { draft, keeping, pairedStore } from "../help/store.ts";

const withRecords = () => {
  const store = pairedStore();
  const { keeper, noteId, saidAt } = keeping(store, "patched the gray tank and the roof seam");
  const add = (fields: Parameters<typeof draft>[0]) => keeper.addRecord(noteId, saidAt, draft(fields), "new");
  const tank = add({ date: "2025-09", cost: 24 });
  const seam = add({ component: "roof-seam", action: "seal", date: "2026-04-01", cost: 31 });
  const fault = add({
    component: "stove",
    kind: "fault",
    action: null,
    outcome: null,
    cost: null,
    date: "2026-05-01",
  });
  const todo = add({
    component: "tire",
    kind: "todo",
    action: "replace",
    outcome: null,
    cost: 118,
    date: null,
  });
  return { store, keeper, noteId, tank, seam, fault, todo };
};

describe("records", () => {
  it("come newest work first", () => {
    const { store, tank, seam } = withRecords();
    expect(store.history.records({ kinds: ["repair"] }).map(({ id }) => id)).toEqual([seam, tank]);
  });

  it("are found by component, action, period and openness", () => {
    const { store, tank, seam, fault, todo } = withRecords();
    const ids = (filter: Parameters<typeof store.history.records>[0]) =>
      store.history.records(filter).map(({ id }) => id);
    expect(ids({ components: ["gray-tank", "stove"] })).toEqual([fault, tank]);
    expect(ids({ actions: ["seal"] })).toEqual([seam]);
    expect(ids({ from: "2025-01-01", to: "2026-01-01" })).toEqual([tank]);
    expect(ids({ open: true }).toSorted()).toEqual([fault, todo].toSorted());
  });

  it("are open no more once dealt with or ticked off", () => {
    const { store, keeper, seam, fault, todo } = withRecords();
    keeper.close(fault, seam);
    keeper.settle(todo, true);
    expect(store.history.records({ open: true })).toEqual([]);
  });

  it("add up, whatever the limit", () => {
    const { store } = withRecords();
    expect(store.history.total({ kinds: ["repair"], limit: 1 })).toEqual({ count: 2, cost: 55 });
  });
});

describe("notes", () => {
  it("are found by their words, other endings included, with the records they made", () => {
    const { store, noteId, tank } = withRecords();
    const [hit] = store.history.notes("patching seams", 3);
    expect(hit?.noteId).toBe(noteId);
    expect(hit?.recordIds).toContain(tank);
  });

  it("are found whatever marks a question holds", () => {
    const { store } = withRecords();
    expect(store.history.notes(`"gray' AND (tank* NEAR "`, 3)).toHaveLength(1);
    expect(store.history.notes("!!!", 3)).toEqual([]);
  });
});

describe("use", () => {
  it("comes oldest first and can be put right", () => {
    const { store, keeper, noteId } = withRecords();
    const id = keeper.addUsage(noteId, { usage: { count: 212, unit: "miles", date: "2026-05-14" } });
    keeper.addUsage(noteId, { usage: { reading: 84210, unit: "miles", date: "2026-05-01" } });
    keeper.setUsage(id, { count: 121, unit: "miles", date: "2026-05-14" });
    expect(store.history.usage().map(({ usage }) => usage)).toEqual([
      { reading: 84210, unit: "miles", date: "2026-05-01" },
      { count: 121, unit: "miles", date: "2026-05-14" },
    ]);
    expect(store.history.usage("2026-05-10")).toHaveLength(1);
  });
});
