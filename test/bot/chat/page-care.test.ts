import { InputFile } from "grammy";
import { expect, it } from "vitest";
import { describeInBrowser } from "./browser.ts";
import { freshKey, ONE_PIXEL, openChat } from "./harness.ts";
import { brokenRules, CONTRASTS, sidewaysScroll } from "./page-measures.ts";
import { comesTrue, echo, run, seen } from "./page-steps.ts";

describeInBrowser("the chat page for everybody", (open) => {
  it("can be used by keyboard alone", async () => {
    const { url, apiRoot } = await openChat();
    run(apiRoot, (bot) => {
      bot.on("message:text", echo);
      bot.on("edited_message:text", (ctx) => ctx.reply(`Changed: ${ctx.editedMessage.text}`));
      bot.on("callback_query:data", (ctx) => ctx.editMessageText("Undone."));
    });
    const page = await open(url);
    await comesTrue(page, "document.activeElement.id === 'words'");
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
    await comesTrue(
      page,
      "(({ scrollHeight, scrollTop, clientHeight }) => scrollHeight - scrollTop - clientHeight < 2)(document.getElementById('scroller'))",
    );
  });

  it.each(["light", "dark"] as const)(
    "passes the rules of axe-core for WCAG 2.2 AA, %s",
    async (colorScheme) => {
      const { server, url, api } = await openChat();
      const { person, secret } = server.join("Wren");
      await api.setMyCommands([{ command: "due", description: "What wants a look next" }]);
      const buttons = { inline_keyboard: [[{ text: "Undo", callback_data: "undo" }]] };
      await api.sendPhoto(person.chat, new InputFile(ONE_PIXEL), {
        caption: "The roof",
        reply_markup: buttons,
      });
      await api.sendDocument(person.chat, new InputFile(Buffer.from("x"), "logbook.pdf"));
      await api.sendVoice(person.chat, new InputFile(Buffer.from("x"), "voice.ogg"), { duration: 2 });
      server.people.say(person, { key: freshKey(), text: "the curb-side one", replyTo: 1 });
      const page = await open(`${url}#as=${secret}`, { colorScheme, viewport: { width: 360, height: 800 } });
      await page.locator("#log .entry").nth(3).waitFor();
      await page.getByRole("button", { name: "More for this message" }).last().click();
      expect(await brokenRules(page)).toEqual([]);
      await page.getByRole("button", { name: "Commands" }).click();
      expect(await brokenRules(page)).toEqual([]);
    },
  );

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
