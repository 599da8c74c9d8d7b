import type { ComponentId } from "../../shared/vocabulary.ts";
import data from "./heat.json" with { type: "json" };
import type { Scan } from "./scan.ts";
import type { Verdict } from "./verdicts.ts";

const setFor = (component: ComponentId): ReadonlySet<string> => {
  if (data.cools.includes(component)) return WARM;
  return data.heats.includes(component) ? COLD : NONE;
};
const WARM: ReadonlySet<string> = new Set(data.warm);
const COLD: ReadonlySet<string> = new Set(data.cold);
const NONE: ReadonlySet<string> = new Set();

/** "Warm again": praise of a heater, and that a fridge gave out. The verdicts as they are meant of a thing. */
export const verdictsOn = (
  component: ComponentId,
  verdicts: readonly Verdict[],
  { tokens }: Scan,
): readonly Verdict[] => {
  const wrong = setFor(component);
  if (wrong.size === 0) return verdicts;
  return verdicts.map((each) => {
    if (each.value.outcome !== "holding") return each;
    const said = tokens.slice(each.from, each.to).map(({ norm }) => norm);
    const isWrong = said.some((word) => wrong.has(word)) && !said.some((word) => DENIES.has(word));
    return isWrong ? { ...each, value: { outcome: "failed" }, source: `wrong-heat:${each.source}` } : each;
  });
};
const DENIES: ReadonlySet<string> = new Set(data.denies);
