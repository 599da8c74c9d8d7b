import type { Temporal } from "temporal-polyfill";
import {
  DEFAULT_SETTINGS,
  type Rig as OutlookRig,
  rigOf as outlookRigOf,
} from "../../shared/outlook/index.ts";
import type { Store } from "../../store/store.ts";
import { announcedTrip } from "./announced-trip.ts";
import type { Rig } from "./rig.ts";

type Here = { readonly store: Store; readonly rig: Rig; readonly today: Temporal.PlainDate };

/** What every outlook shares today: the use log, the trip ahead, the costs of looking and of failing. */
export const outlookRig = ({ store, rig, today }: Here): OutlookRig =>
  outlookRigOf({
    usage: store.history.usage(),
    trip: announcedTrip(store),
    settings: DEFAULT_SETTINGS,
    today,
    hemisphere: rig.hemisphere,
  });
