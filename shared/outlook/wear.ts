import { z } from "zod";
import { COMPONENTS, type ComponentId } from "../vocabulary.ts";
import table from "./tables/wear.json" with { type: "json" };

export const AXES = ["calendar", "miles", "cycles", "fills", "storms", "trips", "nights"] as const;
export type Axis = (typeof AXES)[number];
export type UseAxis = Exclude<Axis, "calendar">;
export const USE_AXES = AXES.filter((axis): axis is UseAxis => axis !== "calendar");

const axisSchema = z.enum(AXES);
const accessSchema = z.enum(["inside", "outside", "roof", "under"]);
/** Where one has to go for a look. */
export type Access = z.infer<typeof accessSchema>;

const positive = z.number().positive();
const share = z.number().min(0).max(1);
const wearTableSchema = z.object({
  about: z.string(),
  typicalPerDay: z.record(z.enum(USE_AXES), positive),
  firstLookAfter: z.object({
    miles: positive,
    cycles: positive,
    fills: positive,
    storms: positive,
    calendar: positive,
  }),
  groups: z.array(
    z.object({
      components: z.array(z.enum(COMPONENTS)).min(1),
      axis: axisSchema,
      useShare: share,
      access: accessSchema,
      hidden: share,
    }),
  ),
});

const wear = wearTableSchema.parse(table);

/** How a component ages and is looked at. */
export type Wear = {
  readonly axis: Axis;
  /** How much of its ageing is use on that axis; the rest is calendar. */
  readonly useShare: number;
  readonly access: Access;
  /** The share of failures that nobody would notice without looking. */
  readonly hidden: number;
};

const byComponent = new Map<ComponentId, Wear>(
  wear.groups.flatMap(({ components, ...rest }) => components.map((id) => [id, rest] as const)),
);
const UNKNOWN: Wear = { axis: "calendar", useShare: 0, access: "outside", hidden: 0.5 };

export const wearOf = (component: ComponentId): Wear => byComponent.get(component) ?? UNKNOWN;

/** Use per day of a trailer that is lived in and moved every week or two; the yardstick of every life in days. */
export const TYPICAL_PER_DAY: Readonly<Record<UseAxis, number>> = wear.typicalPerDay;
const FIRST_LOOK_AFTER: Readonly<Partial<Record<Axis, number>>> = wear.firstLookAfter;
/** Use (or days) after which a new fix is first looked at. */
export const firstLookAfter = (axis: Axis): number | undefined => FIRST_LOOK_AFTER[axis];
export const FIRST_LOOK_DAYS = wear.firstLookAfter.calendar;
