import type { Intent } from "../../shared/memory/intent.ts";
import type { Offer } from "../correct/offer.ts";

/** "The gas one" of an alarm: the thing akin to the one on record, where rules took its loose name for another. */
export const asOffered = (ruled: Intent, offers: readonly Offer[]): Intent => {
  if (ruled.is !== "correct") return ruled;
  const changes = ruled.correction.changes.map((change) => {
    const said = change.change === "fields" ? change.to.component : undefined;
    const akin = offers.find(
      (offer) => offer.akin === true && said !== undefined && offer.senses?.includes(said) === true,
    );
    return akin?.change.change === "fields" && change.change === "fields"
      ? { ...change, to: { ...change.to, ...akin.change.to } }
      : change;
  });
  return { ...ruled, correction: { ...ruled.correction, changes } };
};
