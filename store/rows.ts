import { z } from "zod";
import type { KeptRecord, KeptUsage, Verdict } from "../shared/history.ts";
import { exposureSchema, recordFieldsSchema, usageSchema } from "../shared/record.ts";

const json = z.string().transform((text): unknown => JSON.parse(text));
const flag = z.number().transform((value) => value === 1);
const strings = json.pipe(z.array(z.string()));

const keptRow = z.object({
  id: z.number(),
  note_id: z.number(),
  said_at: z.string(),
  said_by: z.string(),
  kind: z.string(),
  component: z.string(),
  place: z.string().nullable(),
  action: z.string().nullable(),
  materials: json,
  date: z.string().nullable(),
  outcome: z.string().nullable(),
  exposure: json,
  cost: z.number().nullable(),
  fault: z.string().nullable(),
  due: z.string().nullable(),
  done_by: z.string().nullable(),
  brands: strings,
  line: z.number().nullable(),
  closed_by: z.number().nullable(),
  settled: flag,
  got: flag,
  removed: flag,
});

export const toRecord = (row: unknown): Omit<KeptRecord, "verdicts"> => {
  const kept = keptRow.parse(row);
  return {
    id: kept.id,
    noteId: kept.note_id,
    saidAt: kept.said_at,
    saidBy: kept.said_by,
    fields: recordFieldsSchema.parse({ ...kept, where: kept.place }),
    doneBy: kept.done_by,
    brands: kept.brands,
    line: kept.line ?? kept.id,
    closedBy: kept.closed_by,
    settled: kept.settled,
    got: kept.got,
    removed: kept.removed,
  };
};

const verdictRow = z.object({
  record_id: z.number(),
  outcome: z.enum(["holding", "partly", "failed"]),
  date: z.string(),
  said_at: z.string(),
  exposure: json.pipe(z.array(exposureSchema)),
  note_id: z.number().nullable(),
});

export const toVerdict = (row: unknown): Verdict & { readonly recordId: number } => {
  const verdict = verdictRow.parse(row);
  return {
    recordId: verdict.record_id,
    outcome: verdict.outcome,
    when: verdict.date,
    saidAt: verdict.said_at,
    exposure: verdict.exposure,
    noteId: verdict.note_id,
  };
};

const useRow = z.object({
  id: z.number(),
  note_id: z.number(),
  said_at: z.string(),
  unit: z.string(),
  count: z.number().nullable(),
  reading: z.number().nullable(),
  date: z.string().nullable(),
});

export const toUsage = (row: unknown): KeptUsage => {
  const use = useRow.parse(row);
  const amount = use.reading === null ? { count: use.count } : { reading: use.reading };
  return {
    id: use.id,
    noteId: use.note_id,
    saidAt: use.said_at,
    usage: usageSchema.parse({ ...amount, unit: use.unit, date: use.date }),
  };
};
