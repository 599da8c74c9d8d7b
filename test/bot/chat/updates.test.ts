import { setTimeout as sleep } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { memoryChatLog } from "../../../bot/chat/memory-chat-log.ts";
import { freshKey, openChat, refusalOf, TOKEN, temporaryFolder } from "./harness.ts";

const opened = async () => {
  const chat = await openChat();
  const { person } = chat.server.join("Wren");
  const say = (text: string) => chat.server.people.say(person, { key: freshKey(), text });
  const texts = async (options?: Parameters<typeof chat.api.getUpdates>[0]) =>
    (await chat.api.getUpdates(options)).map((update) => update.message?.text);
  return { ...chat, person, say, texts };
};

describe("getUpdates", () => {
  it("gives the same updates until an offset confirms them", async () => {
    const { api, say, texts } = await opened();
    for (const text of ["one", "two", "three"]) say(text);
    const updates = await api.getUpdates({ limit: 2 });
    expect(updates.map((update) => update.message?.text)).toEqual(["one", "two"]);
    expect(await texts()).toEqual(["one", "two", "three"]);
    expect(await texts({ offset: (updates[0]?.update_id ?? 0) + 1 })).toEqual(["two", "three"]);
    expect(await texts({ offset: -1 })).toEqual(["three"]);
    expect(await texts()).toEqual(["three"]);
  });

  it("waits for something to be said, and no longer", async () => {
    const { say, texts } = await opened();
    const waiting = texts({ timeout: 30 });
    await sleep(50);
    const begun = performance.now();
    say("at last");
    expect(await waiting).toEqual(["at last"]);
    expect(performance.now() - begun).toBeLessThan(500);
  });

  it("comes back empty when the time is over", async () => {
    const { texts } = await opened();
    const begun = performance.now();
    expect(await texts({ timeout: 1 })).toEqual([]);
    expect(performance.now() - begun).toBeGreaterThan(900);
  });

  it("leaves out kinds that were not asked for", async () => {
    const { api, say, server, person } = await opened();
    const { id } = say("one");
    server.people.edit(person, id, "one, really");
    const updates = await api.getUpdates({ allowed_updates: ["edited_message"] });
    expect(updates).toMatchObject([{ edited_message: { text: "one, really" } }]);
    expect(updates[0]).not.toHaveProperty("message");
  });

  it("ends an older poll when a second bot polls", async () => {
    const { api, say, texts } = await opened();
    const first = refusalOf(api.getUpdates({ timeout: 30 }));
    await sleep(50);
    const second = texts({ timeout: 30 });
    expect(await first).toMatch(/^409 Conflict: terminated by other getUpdates request/);
    say("for the second");
    expect(await second).toEqual(["for the second"]);
  });

  it("loses nothing when a poll is given up", async () => {
    const { apiRoot, say, texts } = await opened();
    const abort = new AbortController();
    const url = `${apiRoot}/bot${TOKEN}/getUpdates?timeout=30`;
    const given = fetch(url, { signal: abort.signal }).catch(() => "given up");
    await sleep(50);
    abort.abort();
    expect(await given).toBe("given up");
    await sleep(50);
    say("still here");
    expect(await texts()).toEqual(["still here"]);
  });

  it("goes on after a restart, with numbers that go on too", async () => {
    const log = memoryChatLog();
    const filesDir = temporaryFolder();
    const first = await openChat({ log, filesDir });
    const { person, secret } = first.server.join("Wren");
    first.server.people.say(person, { key: freshKey(), text: "before" });
    const waiting = first.api.getUpdates({ offset: 2, timeout: 30 });
    await sleep(50);
    await first.server.stop();
    await waiting.catch(() => []);
    const second = await openChat({ log, filesDir });
    const again = second.server.people.enter(secret);
    expect(again).toEqual(person);
    second.server.people.say(again, { key: freshKey(), text: "after" });
    expect(await second.api.getUpdates()).toMatchObject([{ update_id: 2, message: { text: "after" } }]);
  });

  it("takes parameters in the query and in a form too", async () => {
    const { apiRoot, say } = await opened();
    for (const text of ["one", "two"]) say(text);
    const method = `${apiRoot}/bot${TOKEN}/getupdates`;
    const query = await fetch(`${method}?limit=1&allowed_updates=["message"]`);
    expect(await query.json()).toMatchObject({ ok: true, result: [{ message: { text: "one" } }] });
    const form = await fetch(method, { method: "POST", body: new URLSearchParams({ offset: "2" }) });
    expect(await form.json()).toMatchObject({
      ok: true,
      result: [{ update_id: 2, message: { text: "two" } }],
    });
  });
});

describe("what a person does twice", () => {
  it("counts once", async () => {
    const { server, person, api } = await opened();
    const { message_id: id } = await api.sendMessage(person.chat, "Well?", {
      reply_markup: { inline_keyboard: [[{ text: "Yes", callback_data: "yes" }]] },
    });
    const twice = <T>(act: () => T) => [act(), act()] as const;
    const [said, again] = twice(() => server.people.say(person, { key: "the-same-key", text: "once" }));
    expect(again.id).toBe(said.id);
    expect(twice(() => server.people.tap(person, { key: "another-key", message: id, data: "yes" }))).toEqual([
      true,
      false,
    ]);
    const bytes = Buffer.from("x");
    const send = () =>
      server.people.send(person, { key: "third-key-0", kind: "document", name: "x.txt", bytes });
    expect((await send()).id).toBe((await send()).id);
    twice(() => server.people.edit(person, said.id, "changed"));
    const kinds = (await api.getUpdates()).map((update) => Object.keys(update)[1]);
    expect(kinds).toEqual(["message", "callback_query", "message", "edited_message"]);
  });

  it("cannot be a tap on a button that is not there, or on somebody else's", async () => {
    const { server, person, api } = await opened();
    const other = server.join("Otto").person;
    const { message_id: message } = await api.sendMessage(person.chat, "Well?", {
      reply_markup: { inline_keyboard: [[{ text: "Yes", callback_data: "yes" }]] },
    });
    const tap = (who: typeof person, data: string) => () =>
      server.people.tap(who, { key: freshKey(), message, data });
    expect(tap(person, "no")).toThrow("That button is no longer there.");
    expect(tap(other, "yes")).toThrow("That button is no longer there.");
    expect(await api.getUpdates()).toEqual([]);
  });

  it("finds commands where the messenger would", async () => {
    const { api, say } = await opened();
    say("/start 4711");
    say("see /due or a/b");
    const entities = (await api.getUpdates()).map((update) => update.message?.entities);
    expect(entities).toEqual([
      [{ type: "bot_command", offset: 0, length: 6 }],
      [{ type: "bot_command", offset: 4, length: 4 }],
    ]);
  });
});

describe("holdfast_once", () => {
  const once = (value: string) => ({ holdfast_once: value }) as object;

  it("gives the first message again, also after a restart, an edit and a deletion", async () => {
    const log = memoryChatLog();
    const filesDir = temporaryFolder();
    const first = await openChat({ log, filesDir });
    const { chat } = first.server.join("Wren").person;
    const sent = await first.api.sendMessage(chat, "Written down.", once("turn 1"));
    await first.server.stop();
    const { api } = await openChat({ log, filesDir });
    const again = async () => (await api.sendMessage(chat, "Written down.", once("turn 1"))).message_id;
    const ids = [await again()];
    await api.editMessageText(chat, sent.message_id, "Undone.");
    ids.push(await again());
    await api.deleteMessage(chat, sent.message_id);
    ids.push(await again());
    expect(ids).toEqual([sent.message_id, sent.message_id, sent.message_id]);
    expect((await api.sendMessage(chat, "Written down.", once("turn 2"))).message_id).not.toBe(
      sent.message_id,
    );
  });

  it("is not the person's key of the same name", async () => {
    const { api, server, person } = await opened();
    const said = server.people.say(person, { key: "turn-0000001", text: "mine" });
    expect((await api.sendMessage(person.chat, "yours", once("turn-0000001"))).message_id).not.toBe(said.id);
  });
});
