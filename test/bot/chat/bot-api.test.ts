import { Bot, InputFile } from "grammy";
import { describe, expect, it } from "vitest";
import { atEnd, freshKey, ONE_PIXEL, openChat, refusalOf, TOKEN } from "./harness.ts";

const button = (text: string, callback_data: string) => ({
  reply_markup: { inline_keyboard: [[{ text, callback_data }]] },
});

describe("a bot on the embedded chat", () => {
  it("hears a person and answers, with long polling by grammY", async () => {
    const { server, apiRoot } = await openChat();
    const { person } = server.join("Wren");
    const bot = new Bot(TOKEN, { client: { apiRoot } });
    const heard = new Promise<string>((resolve) => {
      bot.command("start", async (ctx) => {
        await ctx.reply(`Good day, ${ctx.from?.first_name ?? ""}: ${ctx.match}`);
        resolve(ctx.match);
      });
    });
    void bot.start();
    atEnd(() => bot.stop());
    server.people.say(person, { key: freshKey(), text: "/start 4711" });
    expect(await heard).toBe("4711");
  });

  it("tells who it is", async () => {
    const { api } = await openChat();
    expect(await api.getMe()).toMatchObject({ id: 77, is_bot: true, first_name: "Holdfast" });
    expect(await api.deleteWebhook()).toBe(true);
  });

  it("gives a message, its edit, its tap and its deletion", async () => {
    const { server, api } = await openChat({ now: () => 1_700_000_000_000 });
    const { person } = server.join("Wren");
    const first = await api.sendMessage(person.chat, "Record 1", button("Undo", "undo:1"));
    expect(first).toMatchObject({
      text: "Record 1",
      date: 1_700_000_000,
      chat: { id: person.chat, type: "private" },
    });
    server.people.tap(person, { key: freshKey(), message: first.message_id, data: "undo:1" });
    const [update] = await api.getUpdates();
    expect(update?.callback_query).toMatchObject({
      data: "undo:1",
      message: { message_id: first.message_id },
    });
    expect(await api.answerCallbackQuery(update?.callback_query?.id ?? "", { text: "Undone" })).toBe(true);
    const edited = await api.editMessageText(person.chat, first.message_id, "Record 1, undone");
    expect(edited).toMatchObject({ text: "Record 1, undone", edit_date: 1_700_000_000 });
    expect(edited).not.toHaveProperty("reply_markup");
    expect(await api.deleteMessage(person.chat, first.message_id)).toBe(true);
    expect(await refusalOf(api.deleteMessage(person.chat, first.message_id))).toBe(
      "400 Bad Request: message to delete not found",
    );
  });

  it("gives and takes files", async () => {
    const { server, api, apiRoot } = await openChat();
    const { person } = server.join("Wren");
    const sent = await api.sendPhoto(person.chat, new InputFile(ONE_PIXEL, "history of the roof.png"), {
      caption: "The roof, ÄÖ\r\nline two",
    });
    expect(sent).toMatchObject({ caption: "The roof, ÄÖ\r\nline two", photo: [{ width: 1, height: 1 }] });
    const { file_path = "" } = await api.getFile(sent.photo[0]?.file_id ?? "");
    const response = await fetch(`${apiRoot}/file/bot${TOKEN}/${file_path}`);
    expect(Buffer.from(await response.arrayBuffer()).equals(ONE_PIXEL)).toBe(true);
    const again = await api.sendPhoto(person.chat, sent.photo[0]?.file_id ?? "");
    expect(again.photo[0]).toEqual(sent.photo[0]);
  });
});
