import components from "../lexicon/data/components.json" with { type: "json" };
import materials from "../lexicon/data/materials.json" with { type: "json" };
import type { TradePhrase } from "./near-misses.ts";

const names = Object.values(components).flatMap((entry) => [...entry.names, ...entry.parts]);
const heads = Object.values(materials.heads).flat();

/** Names of the lexicon that have two words or three, plain ones only (some are patterns). */
export const TRADE_PHRASES: readonly TradePhrase[] = [...new Set([...names, ...heads])]
  .map((name) => name.replaceAll("-", " "))
  .filter((name) => /^[a-z]+( [a-z]+){1,2}$/.test(name))
  .map((name) => name.split(" "));
