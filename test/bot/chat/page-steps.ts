import { Bot, type Context } from "grammy";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { atEnd, TOKEN } from "./harness.ts";

export const run = (apiRoot: string, teach: (bot: Bot) => void): void => {
  const bot = new Bot(TOKEN, { client: { apiRoot } });
  teach(bot);
  void bot.start();
  atEnd(() => bot.stop());
};

export const echo = (ctx: Context) =>
  ctx.reply(`Heard: ${ctx.message?.text ?? ""}`, {
    reply_markup: { inline_keyboard: [[{ text: "Undo", callback_data: "undo" }]] },
  });

export const words = (page: Page) => page.locator("#log .words").allInnerTexts();
export const box = (page: Page) => page.getByRole("textbox", { name: "Message" });

export const say = async (page: Page, text: string) => {
  await box(page).fill(text);
  await box(page).press("Enter");
};

export const seen = (page: Page, text: string) =>
  page.locator("#log").getByText(text, { exact: true }).waitFor();

/** Waits until an expression holds in the page, which forbids text as code to its own scripts and so to a waiting one. */
export const comesTrue = (page: Page, expression: string): Promise<void> =>
  expect.poll(() => page.evaluate(expression), { timeout: 10_000 }).toBe(true);
