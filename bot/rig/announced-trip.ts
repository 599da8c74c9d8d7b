import { Temporal } from "temporal-polyfill";
import type { Trip } from "../../shared/outlook/index.ts";
import type { Store } from "../../store/store.ts";

/** A trip without a way back is taken to last this long. */
const UNSAID_LENGTH = { days: 30 };

/** The trip that is ahead or on, as the outlook counts it. */
export const announcedTrip = (store: Store): Trip | null => {
  const trip = store.trips.current();
  if (trip === undefined) return null;
  const from = Temporal.PlainDate.from(trip.leaves);
  const to = trip.returns === null ? from.add(UNSAID_LENGTH) : Temporal.PlainDate.from(trip.returns);
  return { from, to, miles: trip.miles };
};
