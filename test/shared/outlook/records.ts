import { Temporal } from "temporal-polyfill";
import type { KeptRecord, KeptUsage, Verdict } from "../../../shared/history.ts";
import {
  DEFAULT_SETTINGS,
  type Outlook,
  outlookOf,
  type Rig,
  rigOf,
  type Trip,
} from "../../../shared/outlook/index.ts";
import type { Exposure, RecordFields, UseUnit } from "../../../shared/record.ts";
import type { ComponentId } from "../../../shared/vocabulary.ts";

export const day = (iso: string): Temporal.PlainDate => Temporal.PlainDate.from(iso);

type Told = Partial<RecordFields> & { readonly component: ComponentId };

const BLANK = {
  kind: "repair",
  where: null,
  action: null,
  materials: [],
  date: null,
  outcome: "untested",
  exposure: [],
  cost: null,
  fault: null,
  due: null,
} as const;

let lastId = 0;

/** A record as the store keeps it, told on `said` (at noon), about that day unless the fields say otherwise. */
export const kept = (said: string, fields: Told, more: Partial<KeptRecord> = {}): KeptRecord => {
  const id = ++lastId;
  return {
    id,
    noteId: id,
    saidAt: `${said}T12:00:00-06:00`,
    saidBy: "crew",
    fields: { ...BLANK, materials: [], exposure: [], date: said, ...fields },
    doneBy: null,
    brands: [],
    line: id,
    closedBy: null,
    settled: false,
    got: false,
    removed: false,
    verdicts: [],
    ...more,
  };
};

export const verdict = (
  outcome: Verdict["outcome"],
  when: string,
  exposure: readonly Exposure[] = [],
): Verdict => ({ outcome, when, saidAt: `${when}T18:00:00-06:00`, exposure, noteId: 1 });

export const withVerdicts = (record: KeptRecord, ...verdicts: readonly Verdict[]): KeptRecord => ({
  ...record,
  verdicts: [...record.verdicts, ...verdicts],
  fields: { ...record.fields, outcome: verdicts.at(-1)?.outcome ?? record.fields.outcome },
});

export const used = (date: string, count: number, unit: UseUnit): KeptUsage => ({
  id: ++lastId,
  noteId: lastId,
  saidAt: `${date}T20:00:00-06:00`,
  usage: { count, unit, date },
});

export const rigOn = (today: string, usage: readonly KeptUsage[] = [], trip: Trip | null = null): Rig =>
  rigOf({ usage, trip, settings: DEFAULT_SETTINGS, today: day(today), hemisphere: "north" });

/** A roof seam sealed with lap sealant, told on a day. */
export const seam = (said: string, more: Partial<RecordFields> = {}): KeptRecord =>
  kept(said, { component: "roof-seam", action: "seal", materials: ["lap sealant"], ...more });

/** A gray tank patched with epoxy and cloth, told on a day. */
export const tank = (said: string): KeptRecord =>
  kept(said, { component: "gray-tank", action: "patch", materials: ["epoxy", "glass cloth"] });

/** The outlook of a live fix. */
export const outlookOn = (rig: Rig, record: KeptRecord, line: readonly KeptRecord[] = [record]): Outlook => {
  const found = outlookOf({ ...rig, record, line, peers: [] });
  if (found === undefined) throw new Error("A live fix has no outlook.");
  return found;
};

export const daysOn = (from: string, to: Temporal.PlainDate): number => day(from).until(to).total("days");
