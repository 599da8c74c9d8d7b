import { ASKS, type AskedFor } from "../../../../nlp/judges/talk.ts";
import type { Expected } from "../../../gold/talk.ts";

/** What a line says of its question. */
export type Line = {
  readonly text: string;
  readonly ask?: string;
  readonly focus?: string;
  readonly of?: string;
  readonly order?: string;
  readonly component?: string;
  readonly action?: string;
  readonly where?: string;
};

/** What a line says that its question asks for, as one of the names that the judges use. */
export const asksOf = ({ ask, focus, of, order }: Line): AskedFor | undefined => {
  const said =
    ask === "longest"
      ? order === "shortest"
        ? "longest shortest"
        : "longest"
      : [ask, focus ?? of].join(" ").trim();
  return ASKS.find((each) => each === said);
};

/** What the questions of conversations are called there. */
const CALLED: Readonly<Record<string, Partial<Line>>> = {
  when: { ask: "last", focus: "when" },
  "what-with": { ask: "last", focus: "materials" },
  used: { ask: "last", focus: "materials" },
  who: { ask: "last", focus: "who" },
  period: { ask: "list" },
  words: { ask: "said" },
};

/** What of the kind is asked for, as far as its name and the answer show it. */
export const ofTurn = (ask: string, answer: Expected | undefined, of = "failures"): Partial<Line> => {
  const called = CALLED[ask];
  if (called !== undefined) return called;
  if (ask === "count") return { of };
  if (ask === "cost") return { of: answer?.cost === undefined ? "dearest" : "all" };
  return {};
};
