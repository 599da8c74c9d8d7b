import { expect, it } from "vitest";
import { memoryChatLog } from "../../../bot/chat/memory-chat-log.ts";
import { describeInBrowser } from "./browser.ts";
import { freshKey, openChat, temporaryFolder } from "./harness.ts";
import { box, comesTrue, say, seen, words } from "./page-steps.ts";

describeInBrowser("the chat page when things go wrong", (open) => {
  it("keeps words while the program is off, also when the page is opened anew, and sends them once", async () => {
    const log = memoryChatLog();
    const filesDir = temporaryFolder();
    const first = await openChat({ log, filesDir });
    const port = Number(new URL(first.url).port);
    const page = await open(first.url);
    await say(page, "before");
    await seen(page, "before");
    await comesTrue(page, "navigator.serviceWorker.controller !== null");
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

  it("begins anew when an older log was brought back", async () => {
    const filesDir = temporaryFolder();
    const log = memoryChatLog();
    const { server, url, api } = await openChat({ log, filesDir });
    const { person, secret } = server.join("Wren");
    for (const text of ["one", "two", "three"]) await api.sendMessage(person.chat, text);
    const page = await open(`${url}#as=${secret}`);
    await seen(page, "three");
    await comesTrue(page, "navigator.serviceWorker.controller !== null");
    const older = memoryChatLog();
    const elsewhere = await openChat({ log: older, filesDir });
    elsewhere.server.people.enter(secret, "Wren");
    await elsewhere.server.stop();
    await server.stop();
    const back = await openChat({ log: older, filesDir, port: Number(new URL(url).port) });
    const again = back.server.people.enter(secret, "Wren");
    await back.api.sendMessage(again.chat, "only this");
    await seen(page, "only this");
    expect(await words(page)).toEqual(["only this"]);
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
});
