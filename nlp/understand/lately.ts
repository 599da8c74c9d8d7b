import { Temporal } from "temporal-polyfill";
import type { Scene, Shown } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { saysSame } from "../correct/offer-signs.ts";
import { type Offer, offersIn } from "../correct/offers.ts";

/** The record that a message may put right, with the values that the message names for it. */
export type Meant = {
  readonly shown: Shown;
  /** How long ago it was told of. */
  readonly minutes: number;
  /** No other record told of with it agrees with the message as well. */
  readonly alone: boolean;
  readonly offers: readonly Offer[];
};

const points = ({ offers, shown }: Omit<Meant, "alone">): number =>
  offers.filter((offer) => saysSame(offer, shown.fields)).length;

/** Of the records told of last (or replied to) the one that the message names most of; the last one of several. */
export const meantIn = (text: string, moment: Moment, scene: Scene): Meant | undefined => {
  const showing = scene.replyTo ?? scene.last;
  if (showing === null || showing.usage.length > 0) return undefined;
  const minutes = Temporal.Instant.from(showing.at)
    .until(Temporal.Instant.from(moment.said))
    .total("minutes");
  const all = showing.records.map((shown) => ({
    shown,
    minutes,
    offers: offersIn(text, moment, shown.fields),
  }));
  const most = Math.max(0, ...all.map(points));
  const best = all.filter((each) => points(each) === most);
  const meant = best.at(-1);
  return meant === undefined ? undefined : { ...meant, alone: best.length === 1 };
};
