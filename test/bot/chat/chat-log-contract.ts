import { describe, expect, it } from "vitest";
import type { ChatLog } from "../../../bot/chat/chat-log.ts";

const ids = (rows: readonly { readonly id: number }[]) => rows.map((row) => row.id);

/** What every chat log must do; `open` gives an empty one. */
export const chatLogContract = (name: string, open: () => ChatLog): void => {
  describe(`the chat log kept by ${name}`, () => {
    it("knows people by their secret and by their chat", () => {
      const log = open();
      const wren = log.addPerson("hash of one", "Wren");
      const otto = log.addPerson("hash of two", "Otto");
      expect(wren.chat).not.toBe(otto.chat);
      expect(log.personBySecret("hash of one")).toEqual(wren);
      expect(log.personBySecret("hash of nobody")).toBeUndefined();
      log.renamePerson(wren.chat, "Wren B.");
      expect(log.person(wren.chat)).toEqual({ chat: wren.chat, name: "Wren B." });
      expect(log.person(otto.chat)?.name).toBe("Otto");
    });

    it("refuses a second person with the same secret, or a message for nobody", () => {
      const log = open();
      log.addPerson("hash", "Wren");
      expect(() => log.addPerson("hash", "Otto")).toThrow();
      expect(() => log.addMessage(5, "{}", null)).toThrow();
    });

    it("numbers changes across edits and deletions, and never gives a number twice", () => {
      const log = open();
      const { chat } = log.addPerson("hash", "Wren");
      const other = log.addPerson("hash of another", "Otto").chat;
      const first = log.addMessage(chat, '{"text":"one"}', null);
      log.addMessage(other, '{"text":"elsewhere"}', null);
      const second = log.addMessage(chat, '{"text":"two"}', null);
      expect(second.change).toBeGreaterThan(first.change);
      const edited = log.setMessage(first.id, '{"text":"one, edited"}');
      expect(edited).toMatchObject({ id: first.id, body: '{"text":"one, edited"}' });
      const gone = log.setMessage(second.id, null);
      expect(log.lastChange()).toBe(gone.change);
      expect(log.changesAfter(chat, 0)).toEqual([edited, gone]);
      expect(log.changesAfter(chat, edited.change)).toEqual([gone]);
      expect(ids(log.messagesBefore(chat, 1_000_000, 10))).toEqual([first.id]);
      expect(log.addMessage(chat, "{}", null).id).toBeGreaterThan(second.id);
      expect(() => log.setMessage(999, "{}")).toThrow();
    });

    it("pages backwards, oldest first", () => {
      const log = open();
      const { chat } = log.addPerson("hash", "Wren");
      const all = Array.from({ length: 7 }, () => log.addMessage(chat, "{}", null).id);
      expect(ids(log.messagesBefore(chat, Number.MAX_SAFE_INTEGER, 3))).toEqual(all.slice(-3));
      expect(ids(log.messagesBefore(chat, all[2] ?? 0, 3))).toEqual(all.slice(0, 2));
    });

    it("keeps a once for one message only, also after it was deleted", () => {
      const log = open();
      const { chat } = log.addPerson("hash", "Wren");
      const row = log.addMessage(chat, "{}", "turn 7");
      expect(log.messageByOnce("turn 7")).toEqual(row);
      expect(log.messageByOnce("turn 8")).toBeUndefined();
      expect(() => log.addMessage(chat, "{}", "turn 7")).toThrow();
      log.setMessage(row.id, null);
      expect(log.messageByOnce("turn 7")).toMatchObject({ id: row.id, body: null });
    });

    it("queues updates until they are confirmed", () => {
      const log = open();
      const all = ["a", "b", "c", "d"].map((body) => log.addUpdate("message", body).id);
      expect(log.updatesFrom(0, 2).map((row) => row.body)).toEqual(["a", "b"]);
      expect(log.lastUpdates(3).map((row) => row.body)).toEqual(["b", "c", "d"]);
      log.confirmUpdates(all[2] ?? 0);
      expect(ids(log.updatesFrom(0, 100))).toEqual(all.slice(2));
      log.confirmUpdates(1_000_000);
      expect(log.addUpdate("message", "e").id).toBeGreaterThan(all[3] ?? 0);
    });

    it("knows taps, files and commands again", () => {
      const log = open();
      const { chat } = log.addPerson("hash", "Wren");
      expect([log.addTap("tap", chat), log.addTap("tap", chat)]).toEqual([true, false]);
      expect([log.tapChat("tap"), log.tapChat("no tap")]).toEqual([chat, undefined]);
      const file = { id: "f", path: "photos/f.png", name: "roof.png", mime: "image/png", size: 12 };
      log.addFile(file);
      expect([log.file("f"), log.file("g")]).toEqual([file, undefined]);
      expect(log.commands()).toBeUndefined();
      log.setCommands("[1]");
      log.setCommands("[2]");
      expect(log.commands()).toBe("[2]");
    });

    it("keeps all of a transaction or nothing", () => {
      const log = open();
      const { chat } = log.addPerson("hash", "Wren");
      const half = () =>
        log.atomically(() => {
          log.addMessage(chat, "{}", "half");
          log.addUpdate("message", "{}");
          throw new Error("the power went");
        });
      expect(half).toThrow("the power went");
      expect([log.messageByOnce("half"), log.updatesFrom(0, 10).length]).toEqual([undefined, 0]);
      expect(log.atomically(() => log.addMessage(chat, "{}", "half")).chat).toBe(chat);
    });

    it("keeps any text as it is", () => {
      const log = open();
      const { chat } = log.addPerson("hash", "Wren");
      const body = JSON.stringify({ text: "nul \u0000, lone \ud83d, שלום, <b>🛠</b>" });
      expect(log.message(log.addMessage(chat, body, null).id)?.body).toBe(body);
    });
  });
};
