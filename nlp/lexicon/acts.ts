import { ACTION_INDEX, type ActionEntry, NOT_ACT_INDEX, type Sense } from "./lexicon.ts";
import type { Hit } from "./pattern.ts";
import type { Token } from "./tokens.ts";

const ORDER: Record<Sense, number> = {
  deed: 0,
  fasten: 1,
  look: 2,
  fit: 3,
  prep: 4,
  new: 5,
  apply: 6,
  generic: 7,
};
const BACK = new Set(["back", "together"]);

/** "bolted it back on" fastens; "bolted a plate on" fits. */
const choose = (
  hits: readonly Hit<ActionEntry>[],
  tokens: readonly Token[],
): Hit<ActionEntry> | undefined => {
  const longest = [...hits].sort((a, b) => b.to - a.to || ORDER[a.value.sense] - ORDER[b.value.sense])[0];
  if (longest?.value.sense !== "fit") return longest;
  const putsBack = tokens.slice(longest.from, longest.to + 1).some((token) => BACK.has(token.norm));
  const fasten = hits.find((hit) => hit.value.sense === "fasten");
  return putsBack && fasten !== undefined ? { ...fasten, to: Math.max(fasten.to, longest.to) } : longest;
};

/** The best reading of an act at each word that may begin one. */
export const actsIn = (tokens: readonly Token[]): Hit<ActionEntry>[] => {
  const none = new Set<number>();
  for (const { from, to } of NOT_ACT_INDEX.all(tokens)) for (let at = from; at < to; at++) none.add(at);
  return tokens.flatMap((_, at) => (none.has(at) ? [] : (choose(ACTION_INDEX.at(tokens, at), tokens) ?? [])));
};
