import { Bot, type Context, InputFile } from "grammy";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { memoryChatLog } from "../../../bot/chat/memory-chat-log.ts";
import { describeInBrowser } from "./browser.ts";
import { atEnd, freshKey, ONE_PIXEL, openChat, TOKEN, temporaryFolder } from "./harness.ts";

const run = (apiRoot: string, teach: (bot: Bot) => void): void => {
  const bot = new Bot(TOKEN, { client: { apiRoot } });
  teach(bot);
  void bot.start();
  atEnd(() => bot.stop());
};

const echo = (ctx: Context) =>
  ctx.reply(`Heard: ${ctx.message?.text ?? ""}`, {
    reply_markup: { inline_keyboard: [[{ text: "Undo", callback_data: "undo" }]] },
  });

const words = (page: Page) => page.locator("#log .words").allInnerTexts();
const box = (page: Page) => page.getByRole("textbox", { name: "Message" });

const say = async (page: Page, text: string) => {
  await box(page).fill(text);
  await box(page).press("Enter");
};

const seen = (page: Page, text: string) => page.locator("#log").getByText(text, { exact: true }).waitFor();

const sidewaysScroll = (page: Page) =>
  page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");

describeInBrowser("the chat page", (open) => {
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

  it("can be used by keyboard alone", async () => {
    const { url, apiRoot } = await openChat();
    run(apiRoot, (bot) => {
      bot.on("message:text", echo);
      bot.on("edited_message:text", (ctx) => ctx.reply(`Changed: ${ctx.editedMessage.text}`));
      bot.on("callback_query:data", (ctx) => ctx.editMessageText("Undone."));
    });
    const page = await open(url);
    await page.keyboard.type("two lines");
    await page.keyboard.press("Shift+Enter");
    await page.keyboard.type("of it");
    await page.keyboard.press("Enter");
    await seen(page, "Heard: two lines\nof it");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("End");
    await page.keyboard.type(" all");
    await page.keyboard.press("Enter");
    await seen(page, "Changed: two lines\nof it all");
    for (let steps = 0; steps < 12; steps += 1) {
      await page.keyboard.press("Shift+Tab");
      if ((await page.evaluate("document.activeElement.textContent")) === "Undo") break;
    }
    await page.keyboard.press("Enter");
    await seen(page, "Undone.");
    expect(await page.evaluate("document.activeElement.className")).toBe("card");
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
    await page.waitForFunction("document.querySelector('#log img').naturalWidth === 1");
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
    const quote = page.getByRole("button", { name: "In reply to Holdfast: Which bearing was it?" });
    await quote.click();
    expect(await page.evaluate("document.activeElement.closest('.entry').id")).toBe("m-1");
    const [update] = await api.getUpdates();
    expect(update?.message?.reply_to_message).toMatchObject({ message_id: 1, text: "Which bearing was it?" });
  });

  it("keeps words while the program is off, also when the page is opened anew, and sends them once", async () => {
    const log = memoryChatLog();
    const filesDir = temporaryFolder();
    const first = await openChat({ log, filesDir });
    const port = Number(new URL(first.url).port);
    const page = await open(first.url);
    await say(page, "before");
    await seen(page, "before");
    await page.waitForFunction("navigator.serviceWorker.controller !== null");
    await first.server.stop();
    await page.getByText("Holdfast is not running. Your words are kept here").waitFor();
    await say(page, "while it was off");
    await page.getByText("Waits to be sent").waitFor();
    await page.reload();
    await page.getByText("Waits to be sent").waitFor();
    await say(page, "and another");
    const { api } = await openChat({ log, filesDir, port });
    await seen(page, "while it was off");
    await seen(page, "and another");
    await page.getByText("Waits to be sent").first().waitFor({ state: "detached" });
    const texts = (await api.getUpdates()).map((update) => update.message?.text);
    expect(texts).toEqual(["before", "while it was off", "and another"]);
    await page.locator("#away").waitFor({ state: "hidden" });
  });

  it("says why something was not taken, and lets it be thrown away", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join("Wren");
    server.people.say(person, { key: freshKey(), text: "the front jack" });
    const page = await open(`${url}#as=${secret}`);
    await seen(page, "the front jack");
    await box(page).press("ArrowUp");
    await api.deleteMessage(person.chat, 1);
    await page.locator("#log .entry").waitFor({ state: "detached" });
    await say(page, "the rear jack");
    await page.getByText("That message is not there to be changed.").waitFor();
    await page.getByRole("button", { name: "Throw away" }).click();
    expect(await page.locator("#waiting .entry").count()).toBe(0);
  });

  it("takes 100,000 characters and says clearly when there are more", async () => {
    const { url, api } = await openChat();
    const page = await open(url);
    await say(page, "x".repeat(100_001));
    expect(await page.locator("#notice").textContent()).toContain("at most 100,000 fit");
    await say(page, "y".repeat(100_000));
    await page.getByRole("button", { name: "Show all 100,000 characters" }).waitFor();
    expect((await api.getUpdates())[0]?.message?.text).toHaveLength(100_000);
  });

  it("fits 360 px with any words, in touchable pieces", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join("Wren");
    const long = `${"W".repeat(400)} ${"a b ".repeat(50)} שלום עולם`;
    await api.sendMessage(person.chat, long, {
      reply_markup: {
        inline_keyboard: [["one", "two", long.slice(0, 60)].map((text) => ({ text, callback_data: "x" }))],
      },
    });
    await api.sendDocument(person.chat, new InputFile(Buffer.from("x"), `${"n".repeat(110)}.pdf`));
    server.people.say(person, { key: freshKey(), text: long, replyTo: 1 });
    const page = await open(`${url}#as=${secret}`, { viewport: { width: 360, height: 640 }, hasTouch: true });
    await page.locator("#log .entry").nth(2).waitFor();
    expect(await sidewaysScroll(page)).toBe(0);
    const small = await page.evaluate(`[...document.querySelectorAll("button, a, textarea, .paper")]
      .filter((element) => element.checkVisibility() && !element.matches(".skip"))
      .map((element) => [element.outerHTML.slice(0, 80), element.getBoundingClientRect()])
      .filter(([, { width, height }]) => width < 44 || height < 44)`);
    expect(small).toEqual([]);
  });

  it("follows the system between light and dark, with readable words in both", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join("Wren");
    await api.sendMessage(person.chat, "Hello");
    const contrasts = async (colorScheme: "light" | "dark") => {
      const page = await open(`${url}#as=${secret}`, { colorScheme });
      await page.locator("#log .card").waitFor();
      return page.evaluate<{ background: number; lowest: number }>(CONTRASTS);
    };
    const light = await contrasts("light");
    const dark = await contrasts("dark");
    expect(light.background).toBeGreaterThan(0.7);
    expect(dark.background).toBeLessThan(0.05);
    expect(Math.min(light.lowest, dark.lowest)).toBeGreaterThanOrEqual(4.5);
  });

  it("keeps the newest message in sight, but not while older ones are read", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join("Wren");
    for (let count = 1; count <= 75; count += 1) await api.sendMessage(person.chat, `Message ${count}`);
    const page = await open(`${url}#as=${secret}`);
    await seen(page, "Message 75");
    expect(await page.getByText("Message 75").isVisible()).toBe(true);
    await page.evaluate("document.getElementById('scroller').scrollTop = 0");
    await page.getByRole("button", { name: "Newest" }).waitFor();
    await api.sendMessage(person.chat, "Message 76");
    await page.getByRole("button", { name: "1 new" }).waitFor();
    expect(await page.evaluate("document.getElementById('scroller').scrollTop")).toBe(0);
    expect(await page.getByText("Message 15", { exact: true }).count()).toBe(0);
    await page.getByRole("button", { name: "Earlier messages" }).click();
    await seen(page, "Message 1");
    await page.getByRole("button", { name: "1 new" }).click();
    await page.waitForFunction(
      "(({ scrollHeight, scrollTop, clientHeight }) => scrollHeight - scrollTop - clientHeight < 2)(document.getElementById('scroller'))",
    );
  });

  it("keeps people apart, and knows a browser again", async () => {
    const { url, api, server } = await openChat();
    const wren = await open(url);
    const otto = await open(url);
    await say(wren, "I am Wren");
    await seen(wren, "I am Wren");
    await say(otto, "I am Otto");
    await seen(otto, "I am Otto");
    const [first, second] = await api.getUpdates();
    expect(first?.message?.chat.id).not.toBe(second?.message?.chat.id);
    await api.sendMessage(first?.message?.chat.id ?? 0, "For Wren only");
    await seen(wren, "For Wren only");
    await wren.getByRole("button", { name: "You" }).click();
    await wren.getByLabel("What should the log call you?").fill("Wren");
    await wren.getByRole("button", { name: "Save" }).click();
    await wren.reload();
    await seen(wren, "For Wren only");
    expect(await words(otto)).toEqual(["I am Otto"]);
    server.rename("Magpie");
    await wren.getByRole("heading", { name: "Magpie" }).waitFor();
    await say(wren, "named");
    await seen(wren, "named");
    expect((await api.getUpdates({ offset: -1 }))[0]?.message?.from.first_name).toBe("Wren");
  });

  it("tells a screen reader what the parts are, and says that the bot is writing", async () => {
    const { server, url, api } = await openChat();
    const { person, secret } = server.join("Wren");
    const page = await open(`${url}#as=${secret}`);
    await page.getByText("Ready").waitFor();
    await api.sendChatAction(person.chat, "typing");
    await page.getByText("Holdfast is writing").waitFor();
    await api.sendMessage(person.chat, "Done");
    await page.getByText("Holdfast is writing").waitFor({ state: "hidden" });
    const log = page.getByRole("log", { name: "Messages" });
    expect(await log.getAttribute("aria-live")).toBe("polite");
    expect(await log.getByRole("article").count()).toBe(1);
    const nameless = await page.evaluate(`[...document.querySelectorAll("button")]
      .filter((button) => !button.textContent.trim() && !button.getAttribute("aria-label")).length`);
    expect(nameless).toBe(0);
  });
});

/** Relative luminance and contrast as WCAG 2.2 defines them, over every visible text of the page. */
const CONTRASTS = `(() => {
  const channel = (value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
  const canvas = document.createElement("canvas").getContext("2d", { willReadFrequently: true });
  const colour = (css) => {
    canvas.clearRect(0, 0, 1, 1);
    canvas.fillStyle = css;
    canvas.fillRect(0, 0, 1, 1);
    return [...canvas.getImageData(0, 0, 1, 1).data].map((value) => value / 255);
  };
  const luminance = ([r, g, b]) => 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
  const behind = (element) => {
    for (let each = element; each; each = each.parentElement) {
      const found = colour(getComputedStyle(each).backgroundColor);
      if (found[3] === 1) return luminance(found);
    }
    return luminance([1, 1, 1]);
  };
  const texts = [...document.querySelectorAll("h1, h2, p, span, time, button, textarea, .words")]
    .filter((element) => element.checkVisibility() && element.textContent.trim() !== "");
  const contrast = (element) => {
    const [a, b] = [luminance(colour(getComputedStyle(element).color)), behind(element)];
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  };
  return { background: behind(document.body), lowest: Math.min(...texts.map(contrast)) };
})()`;
