import { Temporal } from "temporal-polyfill";
import type { RecordId } from "../../shared/history.ts";
import type { Store } from "../../store/store.ts";

/** The looks that were put off, and to which day. */
export const putOffs = (store: Store): ReadonlyMap<RecordId, Temporal.PlainDate> =>
  new Map(store.looks.putOffs().map(({ recordId, day }) => [recordId, Temporal.PlainDate.from(day)]));
