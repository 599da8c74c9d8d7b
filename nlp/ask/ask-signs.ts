import type { Moment } from "../../shared/reading.ts";
import { wordSigns } from "../judges/word-signs.ts";
import { scan } from "../read/scan.ts";
import { sizeOf } from "../read/sizes.ts";
import type { Asked } from "./asked.ts";
import { outlineOf, runsOf } from "./outline.ts";

const ASKING: ReadonlySet<string> = new Set(
  "what whats which when where who whos why how hows is are did do does have has should can am was any remind tell need show".split(
    " ",
  ),
);
/** As many words as are looked at one by one. */
const MOST = 60;

/** The signs, as names, that tell what a question asks for. `ruled` is what the rules take it for. */
export const askSigns = (text: string, moment: Moment, ruled: Asked | undefined): string[] => {
  const outline = outlineOf(text, moment).slice(0, MOST);
  const words = scan(text, moment)
    .tokens.slice(0, MOST)
    .map(({ norm }) => norm);
  const asking = [...new Set(outline.filter((word) => ASKING.has(word)))];
  const has = ["C", "S", "D", "T", "M"].filter((sort) => outline.includes(sort)).join("");
  const rule = ruled === undefined ? "none" : ruled.kind;
  return [
    `rule=${rule}`,
    `rule=${ruled?.rule ?? "none"}`,
    `has=${has}`,
    `rule=${rule} has=${has}`,
    `size=${sizeOf(words.length)}`,
    `asking=${asking.join(" ")}`,
    `opener2=${outline.slice(0, 2).join(" ")}`,
    `opener3=${outline.slice(0, 3).join(" ")}`,
    `ender=${outline.slice(-1).join(" ")}`,
    `ender2=${outline.slice(-2).join(" ")}`,
    ...runsOf("run", outline),
    ...words.map((word) => `word=${word}`),
    ...wordSigns(words),
    ...asking.flatMap((each) => outline.map((word) => `${each}~${word}`)),
  ];
};
