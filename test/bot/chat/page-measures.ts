import axe from "axe-core";
import type { Page } from "playwright-core";

export const sidewaysScroll = (page: Page) =>
  page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");

/** Rules of Deque's axe-core, an independent reading of the Web Content Accessibility Guidelines 2.2. */
export const brokenRules = async (page: Page): Promise<string[]> => {
  await page.evaluate(axe.source);
  const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
  return page.evaluate<string[]>(`axe.run({ runOnly: ${JSON.stringify(tags)} })
    .then(({ violations }) => violations.map(({ id, nodes }) => id + ": " + nodes.map(({ html }) => html).join(" ")))`);
};

/** Relative luminance and contrast as WCAG 2.2 defines them, over every visible text of the page. */
export const CONTRASTS = `(() => {
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
