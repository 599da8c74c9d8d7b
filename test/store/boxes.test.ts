import { describe, expect, it } from "vitest";
import { z } from "zod";
import { NOTHING_SHOWN, Outbox } from "../../store/outbox.ts";
import { CHAT, NOW, pairedStore } from "../help/store.ts";

const at = NOW.toString();
const planSchema = z.array(z.object({ detail: z.string() }));

describe("the inbox", () => {
  it("keeps an update once, however often it comes", () => {
    const { inbox } = pairedStore();
    inbox.put("page", 1, { text: "first" }, at);
    inbox.put("page", 1, { text: "again" }, at);
    inbox.put("messenger", 1, { text: "another line" }, at);
    expect(inbox.next()?.body).toEqual({ text: "first" });
    inbox.done(1);
    expect(inbox.next()?.body).toEqual({ text: "another line" });
  });

  it("sets an update aside after its last attempt, so that it blocks nobody", () => {
    const { inbox } = pairedStore();
    inbox.put("page", 1, "bad", at);
    inbox.put("page", 2, "good", at);
    expect(inbox.failed(1, "Error", 2)).toBe("again");
    expect(inbox.next()?.updateId).toBe(1);
    expect(inbox.failed(1, "Error", 2)).toBe("set-aside");
    expect(inbox.next()?.updateId).toBe(2);
  });
});

describe("the outbox", () => {
  const message = { ...CHAT, method: "sendMessage", turnId: null, at };

  it("hands out replies in order, each until it is sent or refused", () => {
    const { outbox } = pairedStore();
    const first = outbox.put({ ...message, payload: { text: "one" }, shows: NOTHING_SHOWN });
    const second = outbox.put({ ...message, payload: { text: "two" }, shows: NOTHING_SHOWN });
    expect(outbox.next("page")?.id).toBe(first);
    outbox.later(first, "no connection");
    expect(outbox.next("page")).toMatchObject({ id: first, attempts: 1 });
    outbox.sent(first, 55);
    outbox.refused(second, "400");
    expect(outbox.next("page")).toBeUndefined();
  });

  it("remembers what a message shows, the newest edit first", () => {
    const { outbox } = pairedStore();
    const first = outbox.put({
      ...message,
      payload: {},
      shows: { ...NOTHING_SHOWN, of: "nudge", records: [3] },
    });
    outbox.sent(first, 55);
    const edit = outbox.put({
      ...message,
      method: "editMessageText",
      edits: first,
      payload: {},
      shows: { ...NOTHING_SHOWN, of: "nudge", records: [4] },
    });
    outbox.sent(edit, 55);
    expect(outbox.shownBy("page", 7, 55)?.shows.records).toEqual([4]);
    expect(outbox.lastShown("page", 7, "note")).toBeUndefined();
    expect(outbox.lastShown("page", 7)?.id).toBe(edit);
  });
});

describe("a long talk", () => {
  /** What a call prepares of SQL. */
  const sqlOf = (call: (outbox: Outbox) => unknown): readonly string[] => {
    const { db } = pairedStore();
    const asked: string[] = [];
    const listening = new Proxy(db, {
      get: (target, name): unknown =>
        name === "prepare"
          ? (sql: string) => {
              asked.push(sql);
              return target.prepare(sql);
            }
          : Reflect.get(target, name),
    });
    call(new Outbox(listening));
    return asked;
  };

  it.each<readonly [string, (outbox: Outbox) => unknown]>([
    ["what waits", (outbox) => outbox.next("page")],
    ["what was said last", (outbox) => outbox.lastSaid("page", 7)],
    ["what was shown last", (outbox) => outbox.lastShown("page", 7)],
    ["what was last asked unasked", (outbox) => outbox.lastShown("page", 7, "nudge")],
    ["the last list", (outbox) => outbox.lastList("page", 7)],
    ["the last note", (outbox) => outbox.lastTold("page", 7)],
  ])("is never sorted or gone through for %s", (_, call) => {
    const { db } = pairedStore();
    const steps = sqlOf(call).flatMap((sql) =>
      planSchema.parse(db.prepare(`EXPLAIN QUERY PLAN ${sql}`).all(...(sql.match(/\?/g) ?? []))),
    );
    expect(steps.length).toBeGreaterThan(0);
    for (const { detail } of steps) {
      expect(detail).toMatch(/USING INDEX outbox_(?:waiting|said|shown|shown_of|lists|told)\b/);
      expect(detail).not.toContain("TEMP B-TREE");
    }
  });
});
