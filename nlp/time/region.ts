import { z } from "zod";
import data from "./regions.json" with { type: "json" };

const schema = z.object({
  zones: z.record(z.string(), z.array(z.string())),
  prefixes: z.record(z.string(), z.string()),
  else: z.string(),
});
const regions = schema.parse(data);
const byZone = new Map(
  Object.entries(regions.zones).flatMap(([region, zones]) => zones.map((zone) => [zone, region] as const)),
);

/** ISO 3166 country of an IANA zone, with the state where holidays differ: "US", "AU-VIC". */
export const regionOf = (zone: string): string =>
  byZone.get(zone) ??
  Object.entries(regions.prefixes).find(([prefix]) => zone.startsWith(prefix))?.[1] ??
  regions.else;

/** Whether 3/8 is the third of August. */
export const isDayFirst = (region: string): boolean => region !== "US" && region !== "CA";
