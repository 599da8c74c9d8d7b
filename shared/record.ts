import { z } from "zod";
import { ACTIONS, COMPONENTS, KINDS, OUTCOMES } from "./vocabulary.ts";

/** What a fix has been through, or how the rig was used. */
export const USE_UNITS = [
  "trips",
  "miles",
  "km",
  "cycles",
  "storms",
  "nights",
  "fills",
  "days",
  "weeks",
  "months",
  "years",
  "seasons",
] as const;
export const useUnitSchema = z.enum(USE_UNITS);
export type UseUnit = z.infer<typeof useUnitSchema>;

export const exposureSchema = z.object({ count: z.number().nonnegative(), unit: useUnitSchema });
export type Exposure = z.infer<typeof exposureSchema>;

/** A date or interval with its precision, written in EDTF (ISO 8601-2). */
export const edtfSchema = z.string().min(4);
export type Edtf = z.infer<typeof edtfSchema>;

/** One component and one piece of work, verdict, fault or intention. */
export const recordFieldsSchema = z.object({
  kind: z.enum(KINDS),
  component: z.enum(COMPONENTS),
  /** The place on the rig, in the speaker's words. */
  where: z.string().nullable(),
  action: z.enum(ACTIONS).nullable(),
  materials: z.array(z.string()),
  date: edtfSchema.nullable(),
  outcome: z.enum(OUTCOMES).nullable(),
  exposure: z.array(exposureSchema),
  /** Money, in the owner's own currency. */
  cost: z.number().nonnegative().nullable(),
  fault: z.string().nullable(),
  /** For a todo: EDTF, or the trigger in words ("before next trip"). */
  due: z.string().nullable(),
});
export type RecordFields = z.infer<typeof recordFieldsSchema>;
export type Field = keyof RecordFields;
export const RECORD_FIELDS = recordFieldsSchema.keyof().options;

/** Use of the rig itself: an amount, or a meter reading. */
export const usageSchema = z.union([
  z.object({ count: z.number().nonnegative(), unit: useUnitSchema, date: edtfSchema.nullable() }),
  z.object({ reading: z.number().nonnegative(), unit: useUnitSchema, date: edtfSchema.nullable() }),
]);
export type Usage = z.infer<typeof usageSchema>;
