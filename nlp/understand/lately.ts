import { Temporal } from "temporal-polyfill";
import type { Scene, Shown } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { saysSame } from "../correct/offer-signs.ts";
import { type Offer, offersIn } from "../correct/offers.ts";

/** The record that a message may put right, with the values that the message names for it. */
export type Meant = { readonly shown: Shown; readonly minutes: number; readonly offers: readonly Offer[] };

const points = (offers: readonly Offer[], { fields }: Shown): number =>
  offers.filter((offer) => saysSame(offer, fields)).length;

/** Of the records told of last (or replied to) the one that the message names most of; the last one of several. */
export const meantIn = (text: string, moment: Moment, scene: Scene): Meant | undefined => {
  const showing = scene.replyTo ?? scene.last;
  if (showing === null) return undefined;
  const minutes = Temporal.Instant.from(showing.at).until(Temporal.Instant.from(moment.said)).total("minutes");
  return showing.records
    .map((shown): Meant => ({ shown, minutes, offers: offersIn(text, moment, shown.fields) }))
    .reduce<Meant | undefined>(
      (best, each) =>
        best === undefined || points(each.offers, each.shown) >= points(best.offers, best.shown) ? each : best,
      undefined,
    );
};
