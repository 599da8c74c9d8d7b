import type { Scale } from "../../nlp/temperature.ts";
import fahrenheit from "./fahrenheit-zones.json" with { type: "json" };
import type { Rig } from "./rig.ts";

/** The degrees that people mean when they don't say which. */
export const usualDegrees = ({ zone }: Pick<Rig, "zone">): Scale =>
  fahrenheit.zones.includes(zone) || fahrenheit.prefixes.some((prefix) => zone.startsWith(prefix))
    ? "fahrenheit"
    : "celsius";
