import { describe, expect, it } from "vitest";
import { createDesk } from "../help/desk.ts";
import { NOW } from "../help/store.ts";

const records = ({ store }: ReturnType<typeof createDesk>) => store.history.records({});
const seconds = Math.floor(NOW.epochMilliseconds / 1000);

describe("odd messages get one clear sentence and lose nothing", () => {
  it.each([
    ["blanks", "   \n  "],
    ["emoji alone", "🔧🔧🚐🌧️"],
    ["right-to-left text", "תיקנתי את הגג אתמול"],
    ["markup", "<b>gray tank</b> <script>alert(1)</script> &amp; *roof* [x](http://y)"],
    ["a lone surrogate", "roof \ud83d seam"],
    ["marks that searching gives a meaning", `"NEAR( AND * ' ; DROP TABLE records; --`],
  ])("%s", (_, text) => {
    const desk = createDesk();
    expect(desk.say(text)).toHaveLength(1);
    expect(desk.store.db.prepare("SELECT count(*) FROM notes").pluck().get()).toBe(1);
  });

  it("100,000 characters", () => {
    const desk = createDesk();
    const text = "patched the gray tank with epoxy today and had a coffee afterwards. "
      .repeat(1500)
      .slice(0, 100_000);
    expect(desk.say(text).length).toBeGreaterThanOrEqual(1);
    expect(desk.store.notes.get(1)?.text).toHaveLength(100_000);
  }, 60_000);

  it("keeps markup as the characters it is", () => {
    const desk = createDesk();
    desk.say("patched the gray tank today with <b>epoxy</b>");
    const [, ...payloads] = ["", ...desk.store.outbox.newestFirst("page", 7)].map((item) =>
      typeof item === "string" ? item : item.payload,
    );
    for (const payload of payloads) expect(payload).not.toHaveProperty("parse_mode");
  });
});

describe("kinds of message that hold no words", () => {
  it.each([
    ["a place on the map", { location: { latitude: 1, longitude: 2 } }],
    ["a sticker", { sticker: { file_id: "x", emoji: "🙂" } }],
    [
      "a file of an unknown kind",
      { document: { file_id: "x", file_name: "plan.dwg", mime_type: "application/acad" } },
    ],
    ["a poll", { poll: { id: "1", question: "?" } }],
  ])("%s gets one clear sentence", (_, fields) => {
    const desk = createDesk();
    const [reply, ...more] = desk.receive({ message: desk.message(fields) });
    expect(reply).toMatch(/Say it in words/);
    expect(more).toEqual([]);
  });

  it.each([
    ["an update of a kind unknown", { business_message: {} }],
    [
      "a message in a group",
      { message: { chat: { id: -5, type: "group" }, text: "hello", date: seconds, message_id: 1 } },
    ],
    ["an update without anything", {}],
  ])("%s is passed over", (_, update) => {
    expect(createDesk().receive(update)).toEqual([]);
  });
});

describe("messages that come late or twice", () => {
  it("out of order, are dated by when they were said", () => {
    const desk = createDesk();
    desk.say("replaced the water pump today", { date: seconds });
    desk.say("greased the wheel bearings today", { date: seconds - 3 * 86_400 });
    expect(records(desk).map(({ fields }) => [fields.component, fields.date])).toEqual([
      ["water-pump", "2026-05-14"],
      ["wheel-bearing", "2026-05-11"],
    ]);
  });

  it("forwarded, are dated by when they were first said", () => {
    const desk = createDesk();
    desk.say("replaced the water pump today", {
      forward_origin: { type: "hidden_user", sender_user_name: "Tomas", date: seconds - 10 * 86_400 },
    });
    expect(records(desk)[0]?.fields.date).toBe("2026-05-04");
  });

  it("edited before they were ever seen, are told by the edit", () => {
    const desk = createDesk();
    desk.receive({ edited_message: desk.message({ text: "replaced the water pump today" }) });
    expect(records(desk)).toHaveLength(1);
  });

  it("edited to something without work, take the record away", () => {
    const desk = createDesk();
    desk.receive({ message: desk.message({ message_id: 50, text: "replaced the water pump today" }) });
    desk.receive({ edited_message: desk.message({ message_id: 50, text: "nice sunset" }) });
    expect(records(desk)).toEqual([]);
  });
});

describe("buttons", () => {
  it.each([
    "",
    "nonsense",
    "look/1",
    "look/1/maybe",
    "look/-1/holding",
    "undo/abc",
    "constructor/1",
    "__proto__/x",
    "a".repeat(500),
  ])("with data %j do nothing and say so", (data) => {
    const desk = createDesk();
    desk.say("patched the gray tank today with epoxy");
    expect(desk.tap(data)).toEqual(["That button is from an older message and does nothing now."]);
    expect(records(desk)).toHaveLength(1);
  });

  it("for a record that was taken away say so", () => {
    const desk = createDesk();
    desk.say("patched the gray tank today with epoxy");
    desk.tap("undo/1");
    expect(desk.tap("look/1/holding").join()).toMatch(/taken away/);
    expect(desk.store.history.record(1)?.verdicts).toEqual([]);
  });

  it("tapped twice count once", () => {
    const desk = createDesk();
    desk.say("patched the gray tank today with epoxy");
    desk.tap("look/1/holding");
    desk.tap("look/1/holding");
    expect(desk.store.history.record(1)?.verdicts).toHaveLength(1);
  });

  it("of an undo tapped twice undo once", () => {
    const desk = createDesk();
    desk.say("patched the gray tank today with epoxy");
    desk.tap("undo/1");
    expect(desk.tap("undo/1")).toEqual(["That is undone already."]);
  });
});

describe("people", () => {
  it("on two phones at once share one log, and each note knows who said it", () => {
    const desk = createDesk();
    desk.store.people.pair({ channel: "page", chatId: 8 }, "Tomas <b>", NOW.toString());
    desk.say("patched the gray tank today with epoxy");
    desk.receive({ message: desk.message({ text: "greased the wheel bearings today" }, 8) });
    expect(
      records(desk)
        .map(({ saidBy }) => saidBy)
        .toSorted(),
    ).toEqual(["Ines", "Tomas <b>"]);
  });

  it("who are not paired change nothing, by word or by tap", () => {
    const desk = createDesk();
    desk.say("patched the gray tank today with epoxy");
    const stranger = desk.message({ text: "scratch that" }, 99);
    expect(desk.receive({ message: stranger }).join()).toMatch(/^This is a private log/);
    desk.receive({
      callback_query: { id: "1", from: { id: 99, first_name: "X" }, data: "undo/1", message: stranger },
    });
    expect(records(desk)).toHaveLength(1);
    expect(desk.store.db.prepare("SELECT count(*) FROM notes").pluck().get()).toBe(1);
  });
});

describe("a fault of our own", () => {
  it("is tried again, then set aside with a word, and blocks nobody", () => {
    const desk = createDesk();
    const { notes } = desk.store;
    const add = notes.add.bind(notes);
    notes.add = (note) => {
      if (note.text.includes("bad")) throw new Error("a fault");
      return add(note);
    };
    expect(desk.say("bad luck with the roof").join()).toMatch(/Your words are kept/);
    expect(desk.say("patched the gray tank today with epoxy").join()).toMatch(/Gray tank/);
  });
});
