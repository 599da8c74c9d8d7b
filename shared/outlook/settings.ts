import type { Consequence } from "../vocabulary.ts";
import type { Access } from "./wear.ts";

/**
 * What the owner may set. Money is in the owner's own currency; the defaults take a look under the trailer as about
 * an hour of one's own time and are judgement (common practice, no source).
 */
export type Settings = {
  /** What one look costs: the crawl, the dirt, the hour. */
  readonly lookCost: Readonly<Record<Access, number>>;
  /** What a day costs on which a fix has let go unnoticed. */
  readonly dayCost: Readonly<Record<Consequence, number>>;
  /** For safety: the largest share of its life that a fix may spend failed and unnoticed. */
  readonly unnoticedShare: number;
  /** The chance of failing on a trip above which it is named before leaving. */
  readonly tripChance: Readonly<Record<Consequence, number>>;
  /** What a failure costs beyond the mending, for patch against replace. */
  readonly failureCost: Readonly<Record<Consequence, number>>;
  /** Yearly rate, 0.05 for 5 %. */
  readonly discountRate: number;
  /** How much of the spread of lives is the rig's and its keeper's hand, the rest being the place's own (judgement). */
  readonly rigShare: number;
};

export const DEFAULT_SETTINGS: Settings = {
  lookCost: { inside: 2, outside: 4, roof: 10, under: 12 },
  dayCost: { safety: 6, water: 2, use: 1, comfort: 0.2 },
  unnoticedShare: 0.03,
  tripChance: { safety: 0.05, water: 0.15, use: 0.2, comfort: 0.5 },
  failureCost: { safety: 300, water: 200, use: 80, comfort: 10 },
  discountRate: 0.05,
  rigShare: 0.4,
};
