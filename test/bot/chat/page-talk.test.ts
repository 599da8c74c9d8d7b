import { InputFile } from "grammy";
import { expect, it } from "vitest";
import { describeInBrowser } from "./browser.ts";
import { freshKey, ONE_PIXEL, openChat } from "./harness.ts";
import { comesTrue, echo, run, say, seen, words } from "./page-steps.ts";

describeInBrowser("talking on the chat page", (open) => {
  it("sends words, shows the answer, and takes a tap", async () => {
    const { url, apiRoot } = await openChat();
    run(apiRoot, (bot) => {
      bot.on("message:text", echo);
      bot.on("callback_query:data", async (ctx) => {
        await ctx.answerCallbackQuery("Taken back");
        await ctx.editMessageText("Undone.");
      });
    });
    const page = await open(url);
    await say(page, "greased the tongue jack");
    await seen(page, "Heard: greased the tongue jack");
    await page.getByRole("button", { name: "Undo" }).click();
    await seen(page, "Undone.");
    expect(await page.locator("#notice").textContent()).toBe("Taken back");
    expect(await page.getByRole("button", { name: "Undo" }).count()).toBe(0);
    expect(await words(page)).toEqual(["greased the tongue jack", "Undone."]);
  });

  it("offers the commands that the bot has", async () => {
    const { url, apiRoot, api } = await openChat();
    await api.setMyCommands([{ command: "due", description: "What wants a look next" }]);
    run(apiRoot, (bot) => {
      bot.command("due", (ctx) => ctx.reply("Nothing is due."));
    });
    const page = await open(url);
    await page.getByRole("button", { name: "Commands" }).click();
    await page.getByRole("button", { name: "/due What wants a look next" }).click();
    await seen(page, "Nothing is due.");
  });

  it("says the one-time code of the address once", async () => {
    const { url, apiRoot } = await openChat();
    const codes: string[] = [];
    run(apiRoot, (bot) => {
      bot.command("start", async (ctx) => {
        codes.push(ctx.match);
        await ctx.reply("Paired.");
      });
    });
    const page = await open(`${url}#code=7QK2-9F`);
    await seen(page, "Paired.");
    expect(page.url()).toBe(url);
    await page.reload();
    await seen(page, "Paired.");
    expect(codes).toEqual(["7QK2-9F"]);
  });

  it("shows markup as the letters it is made of", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join('<img src=x onerror="alert(1)">');
    const nasty =
      "<b>bold</b> <script>alert(1)</script> <img src=x onerror=alert(2)> &amp; *stars* [a](javascript:alert(3))";
    await api.sendMessage(person.chat, nasty, {
      reply_markup: { inline_keyboard: [[{ text: "<i>tap</i>", callback_data: "x" }]] },
    });
    await api.sendDocument(person.chat, new InputFile(Buffer.from("x"), "<b>.html"), { caption: nasty });
    server.people.say(person, { key: freshKey(), text: nasty });
    const page = await open(`${url}#as=${secret}`);
    await page.locator("#log .entry").nth(2).waitFor();
    expect(await words(page)).toEqual([nasty, nasty, nasty]);
    expect(await page.locator("#log script, #log img, #log b, #log i").count()).toBe(0);
    expect(await page.locator(".stub").textContent()).toBe("<i>tap</i>");
  });

  it("shows entities as emphasis", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join("Wren");
    await api.sendMessage(person.chat, "Gray tank: open", {
      entities: [{ type: "bold", offset: 0, length: 9 }],
    });
    const page = await open(`${url}#as=${secret}`);
    expect(await page.locator("#log strong").textContent()).toBe("Gray tank");
  });

  it("uploads a picture with its caption, a paper and a recording", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join("Wren");
    const page = await open(`${url}#as=${secret}`);
    await page.setInputFiles("#files", [
      { name: "roof.png", mimeType: "image/png", buffer: ONE_PIXEL },
      { name: "list.txt", mimeType: "text/plain", buffer: Buffer.from("butyl tape") },
    ]);
    await say(page, "The roof edge");
    await page.getByRole("link", { name: "list.txt" }).waitFor();
    await page.getByRole("button", { name: "Record a voice note" }).click();
    await page.getByText("Recording 0:01").waitFor();
    await page.getByRole("button", { name: "Send", exact: true }).click();
    await page.locator("#log audio").waitFor();
    const messages = (await api.getUpdates()).map((update) => update.message);
    expect(messages).toMatchObject([
      { caption: "The roof edge", photo: [{ width: 1 }], from: { id: person.chat } },
      { document: { file_name: "list.txt", mime_type: "text/plain", file_size: 10 } },
      {
        voice: {
          mime_type: expect.stringMatching(/^audio\//) as string,
          duration: expect.any(Number) as number,
        },
      },
    ]);
    const picture = page.locator("#log img");
    await comesTrue(page, "document.querySelector('#log img').naturalWidth === 1");
    expect(await picture.getAttribute("alt")).toBe("The roof edge");
  });

  it("sends a picture that is none as the file that it is", async () => {
    const { url, api } = await openChat();
    const page = await open(url);
    const name = "torn.png";
    await page.setInputFiles("#files", { name, mimeType: "image/png", buffer: Buffer.from("torn") });
    await say(page, "");
    await page.getByRole("link", { name }).waitFor();
    expect((await api.getUpdates())[0]?.message?.document?.file_name).toBe(name);
  });

  it("gives a paper of the bot to be kept, never to be shown", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join("Wren");
    await api.sendDocument(person.chat, new InputFile(Buffer.from("<h1>log</h1>"), "logbook.html"));
    const page = await open(`${url}#as=${secret}`);
    const download = page.waitForEvent("download");
    await page.getByRole("link", { name: "logbook.html" }).click();
    expect((await download).suggestedFilename()).toBe("logbook.html");
  });

  it("replies to a message, and leads back to it", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join("Wren");
    await api.sendMessage(person.chat, "Which bearing was it?");
    const page = await open(`${url}#as=${secret}`);
    await page.getByRole("button", { name: "More for this message" }).click();
    await page.getByRole("button", { name: "Reply" }).click();
    await say(page, "the curb-side one");
    const quote = page.getByRole("button", { name: /In reply to\s+Holdfast\s+Which bearing was it\?/ });
    await quote.click();
    expect(await page.evaluate("document.activeElement.closest('.entry').id")).toBe("m-1");
    const [update] = await api.getUpdates();
    expect(update?.message?.reply_to_message).toMatchObject({ message_id: 1, text: "Which bearing was it?" });
  });
});
