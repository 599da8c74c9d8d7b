import type { Change } from "../../shared/memory/correction.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { Offer } from "./offer.ts";

/** "58 that should be, no 48", of what is down at 48: the sum that is there already is the one denied. */
export const withOtherSum = (
  changes: readonly Change[],
  offers: readonly Offer[],
  { cost }: RecordFields,
): readonly Change[] => {
  const said = offers.filter(({ field, reckoned }) => field === "cost" && reckoned !== true);
  const others = new Set(said.map(({ is }) => Number(is)).filter((sum) => sum !== cost));
  const [other] = others;
  if (cost === null || other === undefined || others.size > 1) return changes;
  return changes.map(
    (change): Change =>
      change.change === "number" && change.to === cost ? { ...change, to: other } : change,
  );
};
