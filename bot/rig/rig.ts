import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import type { Hemisphere, Moment } from "../../shared/reading.ts";
import type { Store } from "../../store/store.ts";
import southernZones from "./southern-zones.json" with { type: "json" };

export const UNNAMED = "your rig";

const hour = z.number().int().min(0).max(23);

export const rigSchema = z.object({
  name: z.string().min(1).max(60).default(UNNAMED),
  zone: z.string(),
  hemisphere: z.enum(["north", "south"]),
  units: z.enum(["miles", "km"]).default("miles"),
  /** Local hours between which the phone stays quiet. */
  quietFrom: hour.default(21),
  quietTo: hour.default(8),
});
export type Rig = z.infer<typeof rigSchema>;

export const hemisphereOf = (zone: string): Hemisphere =>
  southernZones.prefixes.some((prefix) => zone.startsWith(prefix)) || southernZones.zones.includes(zone)
    ? "south"
    : "north";

export const isZone = (zone: string): boolean => {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return true;
  } catch {
    return false;
  }
};

const KEYS = Object.keys(rigSchema.shape) as (keyof Rig)[];
export const settingKey = (field: keyof Rig): string => `rig.${field}`;

/** The rig's settings; what was never set has its default. */
export const rigOf = (store: Store): Rig => {
  const zone = z
    .string()
    .default(() => Temporal.Now.timeZoneId())
    .parse(store.settings.get(settingKey("zone")));
  const kept: Record<string, unknown> = Object.fromEntries(
    KEYS.map((key): [string, unknown] => [key, store.settings.get(settingKey(key))]).filter(
      ([, value]) => value !== undefined,
    ),
  );
  return rigSchema.parse({ zone, hemisphere: hemisphereOf(zone), ...kept });
};

/** Puts down the zone and hemisphere of a new rig, without touching what is set. */
export const foundRig = (store: Store, rig: Partial<Rig>): void => {
  for (const key of KEYS) {
    const value = rig[key];
    if (value !== undefined && store.settings.get(settingKey(key)) === undefined)
      store.settings.put(settingKey(key), value);
  }
};

/** An instant as the rig's people would write it: ISO 8601 with their offset. */
export const localIso = (instant: Temporal.Instant, zone: string): string =>
  instant.toString({ timeZone: zone, smallestUnit: "second" });

export const momentOf = (instant: Temporal.Instant, rig: Rig): Moment => ({
  said: localIso(instant, rig.zone),
  zone: rig.zone,
  hemisphere: rig.hemisphere,
});

export const dayOf = (instant: Temporal.Instant, rig: Rig): Temporal.PlainDate =>
  instant.toZonedDateTimeISO(rig.zone).toPlainDate();
