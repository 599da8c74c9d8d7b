import { readFileSync } from "node:fs";
import { afterEach, describe, expect, it } from "vitest";
import { startTalk, type Talk, textOf } from "../help/talk.ts";

const VOICE = new URL("../nlp/hear/files/note.ogg", import.meta.url);
const voiceNote = (): Uint8Array<ArrayBuffer> => new Uint8Array(readFileSync(VOICE));

let talk: Talk;
afterEach(() => talk.stop());

const send = (bytes = voiceNote(), name = "note.ogg", mime = "audio/ogg") =>
  talk.person.upload("voice", name, bytes, mime);

const botMessages = async () => (await talk.person.messages()).filter(({ from }) => from?.is_bot === true);

describe("a voice note", () => {
  it("comes back as what was heard and the record it made, in one message", async () => {
    talk = await startTalk({ sampleModel: true });
    const before = (await botMessages()).length;
    await send();
    await talk.quiet();
    const replies = (await botMessages()).slice(before);
    expect(replies).toHaveLength(1);
    expect(textOf(replies)).toMatch(/^“.+”\n\n/);
    const note = talk.program.store.notes.get(1);
    expect(note?.media?.kind).toBe("voice");
    expect(note?.heard).not.toBe("");
  }, 60_000);

  it("is put right by “no, I said …”, and what the recogniser wrote stays", async () => {
    talk = await startTalk({ sampleModel: true });
    await send();
    await talk.quiet();
    const heard = talk.program.store.notes.get(1)?.heard;
    await talk.say("no, I said patched the black tank with epoxy today");
    expect(talk.program.store.notes.get(1)).toMatchObject({
      heard,
      text: "patched the black tank with epoxy today",
    });
    expect(talk.program.store.history.records({}).map(({ fields }) => fields.component)).toEqual([
      "black-tank",
    ]);
  }, 60_000);

  it("leaves the chat free while it is listened to", async () => {
    talk = await startTalk({ sampleModel: true });
    await send();
    const reply = await talk.say("greased the wheel bearings today");
    expect(textOf(reply)).toMatch(/Wheel bearing/);
  }, 60_000);

  it("among many sent at once is answered in one summary, in the order of recording", async () => {
    talk = await startTalk({ sampleModel: true });
    const before = (await botMessages()).length;
    for (let count = 0; count < 3; count++) await send();
    await talk.quiet();
    const replies = (await botMessages()).slice(before);
    expect(replies).toHaveLength(1);
    const summary = textOf(replies);
    expect(summary).toMatch(/^All 3 voice notes are down\./);
    expect(["\n1. “", "\n2. “", "\n3. “"].map((mark) => summary.includes(mark))).toEqual([true, true, true]);
  }, 60_000);

  it("without weights is kept, and says what to do", async () => {
    talk = await startTalk();
    await send();
    await talk.quiet();
    expect(textOf((await botMessages()).slice(-1))).toMatch(/kept, but.*npm run model/);
    expect(talk.program.store.hearings.next("to-hear")?.noteId).toBe(1);
  });

  it.each([
    ["garbage", Uint8Array.from({ length: 5000 }, (_, index) => (index * 7919) % 256)],
    ["half a file", voiceNote().slice(0, 2500)],
  ])(
    "of %s gets a clear sentence, and the file is kept",
    async (_, bytes) => {
      talk = await startTalk({ sampleModel: true });
      await send(bytes);
      await talk.quiet();
      expect(textOf((await botMessages()).slice(-1))).toMatch(/kept/);
      expect(talk.program.store.notes.get(1)?.media?.file).toBeTruthy();
    },
    60_000,
  );
});
