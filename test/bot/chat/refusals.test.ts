import { Api, InputFile } from "grammy";
import { describe, expect, it } from "vitest";
import { ONE_PIXEL, openChat, refusalOf, TOKEN } from "./harness.ts";

/** The words are those that the Bot API answers with; written down from memory, no published list exists. */
describe("what the Bot API refuses here, and how", () => {
  it("texts and chats", async () => {
    const { server, api } = await openChat();
    const { chat } = server.join("Wren").person;
    const refusals = [
      [api.sendMessage(5, "hello"), "400 Bad Request: chat not found"],
      [api.sendMessage(chat, ""), "400 Bad Request: message text is empty"],
      [api.sendMessage(chat, " \n "), "400 Bad Request: message text is empty"],
      [api.sendMessage(chat, "x".repeat(4097)), "400 Bad Request: message is too long"],
      [
        api.sendMessage(chat, "x", { entities: [{ type: "bold", offset: 0, length: 2 }] }),
        "400 Bad Request: can't parse entities: entity is beyond the text's end",
      ],
      [
        api.sendMessage(chat, "x", { reply_parameters: { message_id: 99 } }),
        "400 Bad Request: message to be replied not found",
      ],
    ] as const;
    for (const [call, words] of refusals) expect(await refusalOf(call)).toBe(words);
    expect(await refusalOf(api.sendMessage(chat, "<b>x</b>", { parse_mode: "HTML" }))).toMatch(
      /^400 .*parse_mode/,
    );
    expect((await api.sendMessage(chat, "x".repeat(4096))).text).toHaveLength(4096);
    const reply = { message_id: 99, allow_sending_without_reply: true };
    expect(await api.sendMessage(chat, "x", { reply_parameters: reply })).not.toHaveProperty(
      "reply_to_message",
    );
  });

  it("buttons with data of more than 64 bytes, or none", async () => {
    const { server, api } = await openChat();
    const { chat } = server.join("Wren").person;
    const send = (callback_data: string) =>
      api.sendMessage(chat, "x", { reply_markup: { inline_keyboard: [[{ text: "ok", callback_data }]] } });
    expect(await refusalOf(send("ä".repeat(33)))).toBe("400 Bad Request: BUTTON_DATA_INVALID");
    expect(await refusalOf(send(""))).toBe("400 Bad Request: BUTTON_DATA_INVALID");
    expect((await send("ä".repeat(32))).reply_markup?.inline_keyboard).toHaveLength(1);
  });

  it("edits of nothing, of nothing new, and of what somebody else said", async () => {
    const { server, api } = await openChat();
    const { person } = server.join("Wren");
    const other = server.join("Otto").person;
    const said = server.people.say(person, { key: "key-12345678", text: "mine" }).id;
    const { message_id: sent } = await api.sendMessage(person.chat, "yours");
    expect(await refusalOf(api.editMessageText(person.chat, 99, "x"))).toBe(
      "400 Bad Request: message to edit not found",
    );
    expect(await refusalOf(api.editMessageText(other.chat, sent, "x"))).toBe(
      "400 Bad Request: message to edit not found",
    );
    expect(await refusalOf(api.editMessageText(person.chat, said, "x"))).toBe(
      "400 Bad Request: message can't be edited",
    );
    expect(await refusalOf(api.editMessageText(person.chat, sent, "yours"))).toMatch(
      /^400 Bad Request: message is not modified/,
    );
    expect(await refusalOf(api.editMessageReplyMarkup(person.chat, sent))).toMatch(/message is not modified/);
    await api.editMessageText(person.chat, sent, "new");
    expect(await refusalOf(api.editMessageText(person.chat, sent, "new"))).toMatch(/message is not modified/);
    expect(await refusalOf(api.editMessageCaption(person.chat, sent, { caption: "x" }))).toMatch(
      /no caption/,
    );
  });

  it("files that are none", async () => {
    const { server, api } = await openChat();
    const { chat } = server.join("Wren").person;
    const picture = (bytes: Buffer) => api.sendPhoto(chat, new InputFile(bytes, "x.png"));
    expect(await refusalOf(picture(Buffer.from("no picture")))).toBe("400 Bad Request: IMAGE_PROCESS_FAILED");
    expect(await refusalOf(api.sendDocument(chat, new InputFile(Buffer.alloc(0), "x")))).toBe(
      "400 Bad Request: file must be non-empty",
    );
    expect(await refusalOf(api.sendDocument(chat, "unknown-id"))).toMatch(/wrong file identifier/);
    expect(await refusalOf(api.getFile("unknown-id"))).toMatch(/^400 Bad Request: wrong file_id/);
    expect(
      await refusalOf(api.sendPhoto(chat, new InputFile(ONE_PIXEL), { caption: "x".repeat(1025) })),
    ).toBe("400 Bad Request: message caption is too long");
    const large = new InputFile(Buffer.alloc(23 * 1024 * 1024), "large.bin");
    expect(await refusalOf(api.sendDocument(chat, large))).toBe("413 Request Entity Too Large");
  });

  it("taps that are unknown, tokens that are wrong, methods that are none", async () => {
    const { api, apiRoot } = await openChat();
    expect(await refusalOf(api.answerCallbackQuery("nothing"))).toMatch(/^400 Bad Request: query is too old/);
    for (const token of ["77:another", "no-token", `${TOKEN}x`]) {
      expect(await refusalOf(new Api(token, { apiRoot }).getMe())).toBe("401 Unauthorized");
    }
    const raw = api.raw as unknown as Record<string, () => Promise<unknown>>;
    expect(await refusalOf(raw["sendDice"]?.() ?? Promise.resolve())).toBe("404 Not Found");
    expect(await refusalOf(raw["constructor"]?.() ?? Promise.resolve())).toMatch(/404|no refusal/);
  });

  it("requests in the wrong form, without harm", async () => {
    const { apiRoot, api, faults } = await openChat();
    const post = async (type: string, body: string) => {
      const response = await fetch(`${apiRoot}/bot${TOKEN}/sendMessage`, {
        method: "POST",
        headers: { "content-type": type },
        body,
      });
      return [response.status, await response.json()];
    };
    const refused = (description: string) => [
      400,
      { ok: false, error_code: 400, description: `Bad Request: ${description}` },
    ];
    expect(await post("application/json", "{")).toEqual(refused("object expected"));
    expect(await post("application/json", "[1]")).toEqual(refused("object expected"));
    expect(await post("application/json", "{}")).toEqual(refused("chat_id is empty"));
    expect(await post("multipart/form-data", "x")).toEqual(refused("malformed multipart/form-data"));
    expect(await post("multipart/form-data; boundary=x", "--x\r\nbroken")).toEqual(
      refused("malformed multipart/form-data"),
    );
    expect(await post("text/plain", "x")).toEqual(refused("chat_id is empty"));
    expect((await api.getMe()).id).toBe(77);
    expect(faults).toEqual([]);
  });
});
