import { existsSync } from "node:fs";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect } from "vitest";
import { atEnd } from "./harness.ts";

/** Where a Chromium is looked for; the environment's CHROMIUM names another place. */
const PLACES = process.env["CHROMIUM"]
  ? [process.env["CHROMIUM"]]
  : ["/usr/bin/chromium", "/usr/bin/chromium-browser"];
const executablePath = PLACES.find((place) => existsSync(place));

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--use-fake-ui-for-media-stream",
  "--use-fake-device-for-media-stream",
];

export type Open = (url: string, options?: BrowserContextOptions) => Promise<Page>;

/** Tests in a real browser; where none is found they are left out, and their title says so. */
export const describeInBrowser = (title: string, tests: (open: Open) => void): void => {
  const name = executablePath ? title : `${title} (no Chromium at ${PLACES.join(" or ")})`;
  if (!executablePath) process.stderr.write(`Left out: the tests of ${name}. Install it to run them.\n`);
  describe.skipIf(!executablePath)(name, () => {
    let browser: Browser | undefined;
    beforeAll(async () => {
      browser = await chromium.launch({ executablePath: executablePath ?? "", args: FLAGS });
    });
    afterAll(() => browser?.close());

    tests(async (url, options) => {
      if (!browser) throw new Error("the browser did not start");
      const context = await browser.newContext({ locale: "en-GB", timezoneId: "America/Denver", ...options });
      context.setDefaultTimeout(15_000);
      const page = await context.newPage();
      const troubles: string[] = [];
      page.on("pageerror", (error) => troubles.push(error.message));
      page.on("dialog", (dialog) => troubles.push(`dialog: ${dialog.message()}`));
      atEnd(async () => {
        await context.close();
        expect(troubles).toEqual([]);
      });
      await page.goto(url);
      return page;
    });
  });
};
