import { readFileSync } from "node:fs";
import { headSchema, type ReplayTurn, turnSchema } from "../contracts/replay-lines.ts";

const SEASONS = new URL("../../samples/magpie-seasons.jsonl", import.meta.url);

export type Seasons = {
  readonly head: ReturnType<typeof headSchema.parse>;
  readonly turns: readonly ReplayTurn[];
};

/** Magpie's invented seasons, as somebody would have told them. */
export const readSeasons = (): Seasons => {
  const [first, ...rest] = readFileSync(SEASONS, "utf8")
    .split("\n")
    .filter((line) => line.trim() !== "");
  return {
    head: headSchema.parse(JSON.parse(first ?? "{}")),
    turns: rest.map((line) => turnSchema.parse(JSON.parse(line))),
  };
};
