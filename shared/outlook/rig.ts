import type { Temporal } from "temporal-polyfill";
import type { KeptUsage } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { Settings } from "./settings.ts";
import { type Trip, type Use, useOf } from "./use.ts";

/** What all outlooks of a rig share on one day. */
export type Rig = {
  readonly use: Use;
  readonly trip: Trip | null;
  readonly settings: Settings;
  readonly hemisphere: Hemisphere;
};

/** Everything that the outlooks of a rig share, from its use log. */
export const rigOf = (input: {
  readonly usage: readonly KeptUsage[];
  readonly trip: Trip | null;
  readonly settings: Settings;
  readonly today: Temporal.PlainDate;
  readonly hemisphere: Hemisphere;
}): Rig => ({ use: useOf(input), trip: input.trip, settings: input.settings, hemisphere: input.hemisphere });
