import type { Token } from "../lexicon/tokens.ts";
import type { Stretch } from "../read/scan.ts";

const NUMBERED: ReadonlySet<string> = new Set(
  "day number bay site pitch page axle slide zone gate chapter".split(" "),
);

/** "Since day 1", "page two": the number of something, no sum or amount. */
export const isNumberOf = ({ from }: Stretch, tokens: readonly Token[]): boolean =>
  NUMBERED.has(tokens[from - 1]?.norm ?? "");
