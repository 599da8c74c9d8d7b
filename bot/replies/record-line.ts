import type { Temporal } from "temporal-polyfill";
import { capital } from "../../shared/capital.ts";
import { sayDate } from "../../shared/edtf.ts";
import type { KeptRecord } from "../../shared/history.ts";
import type { Hemisphere } from "../../shared/reading.ts";
import type { Field, RecordFields } from "../../shared/record.ts";
import { componentName } from "../../shared/vocabulary.ts";
import type { Turn } from "../conversation/turn.ts";
import { sayMoney } from "../rig/money.ts";
import { byWhom } from "./who.ts";
import { doneWord, doWord, listed, sayExposure } from "./words.ts";

export type LineContext = {
  readonly today: Temporal.PlainDate;
  readonly zone: string;
  readonly hemisphere: Hemisphere;
  /** Fields that the reader doubts: each is shown with a question mark. */
  readonly doubts: readonly Field[];
};

export const lineContext = (turn: Turn, doubts: readonly Field[] = []): LineContext => ({
  today: turn.today,
  zone: turn.rig.zone,
  hemisphere: turn.rig.hemisphere,
  doubts,
});

type Marked = (field: Field, text: string) => string;

const marker =
  (doubts: readonly Field[]): Marked =>
  (field, text) =>
    doubts.includes(field) ? `${text} (?)` : text;

/** "Gray tank, rear corner" */
export const thingName = ({ component, where }: Pick<RecordFields, "component" | "where">): string => {
  const name = componentName(component);
  const known = new Set(name.split(" "));
  const saysMore =
    where
      ?.toLowerCase()
      .split(/\s+/)
      .some((word) => !known.has(word) && !SMALL.has(word)) === true;
  return capital(saysMore ? `${name}, ${where}` : name);
};

const SMALL = new Set(["the", "a", "on", "in", "at", "of"]);

/** A phrase of the speaker's, fit to stand in a sentence of ours. */
const phrase = (text: string): string => text.replace(/[\s,.;:!?]+$/u, "");

const dated = (fields: RecordFields, context: LineContext): string =>
  fields.date === null ? "no date given" : sayDate(fields.date, context.today, context.hemisphere);

const throughUse = (fields: RecordFields): string =>
  fields.exposure.length === 0 ? "" : ` after ${listed(fields.exposure.map(sayExposure))}`;

const HOW_IT_HOLDS = {
  holding: "Holding",
  partly: "Better, not right",
  failed: "Did not hold",
  untested: "",
} as const;

const outcomeOf = (fields: RecordFields): string => {
  if (fields.outcome === null) return "";
  const words = HOW_IT_HOLDS[fields.outcome];
  if (words === "")
    return fields.exposure.length === 0 ? "" : `So far ${listed(fields.exposure.map(sayExposure))}`;
  return `${words}${throughUse(fields)}`;
};

const sentences = (...parts: readonly string[]): string =>
  parts
    .filter((part) => part !== "")
    .map((part) => `${part}.`)
    .join(" ");

const repairLine = (record: KeptRecord, context: LineContext, mark: Marked): string => {
  const { fields } = record;
  const materials =
    fields.materials.length === 0 ? "" : mark("materials", ` with ${listed(fields.materials)}`);
  const who = record.doneBy === null ? "" : ` by ${byWhom(record.doneBy)}`;
  const cost = fields.cost === null ? "" : mark("cost", `, ${sayMoney(fields.cost, context.zone)}`);
  const work = `${mark("component", thingName(fields))}: ${mark("action", doneWord(fields.action))}${materials}${who}, ${mark("date", dated(fields, context))}${cost}`;
  return sentences(work, mark("outcome", outcomeOf(fields)));
};

const CHECKED = {
  holding: "fine",
  partly: "not quite right",
  failed: "not right",
  untested: "no verdict",
} as const;

const checkLine = ({ fields }: KeptRecord, context: LineContext, mark: Marked): string => {
  const verdict = mark("outcome", `${CHECKED[fields.outcome ?? "untested"]}${throughUse(fields)}`);
  const trouble = fields.fault === null || fields.outcome === "holding" ? "" : capital(phrase(fields.fault));
  return sentences(
    `${mark("component", thingName(fields))}: ${doneWord(fields.action)} ${mark("date", dated(fields, context))}, ${verdict}`,
    trouble,
  );
};

const faultLine = ({ fields }: KeptRecord, context: LineContext, mark: Marked): string =>
  sentences(
    `${mark("component", thingName(fields))}: ${phrase(fields.fault ?? "something wrong")}, found ${mark("date", dated(fields, context))}`,
    "Not dealt with yet",
  );

const dueWords = (due: string, { today, hemisphere }: LineContext): string =>
  /^\d{4}/.test(due) ? sayDate(due, today, hemisphere) : due;

const todoLine = ({ fields }: KeptRecord, context: LineContext, mark: Marked): string => {
  const what = fields.materials.length === 0 ? "" : ` (${listed(fields.materials)})`;
  const due = fields.due === null ? "" : `, ${mark("due", dueWords(fields.due, context))}`;
  const cost = fields.cost === null ? "" : `, about ${sayMoney(fields.cost, context.zone)}`;
  return sentences(
    `To do: ${mark("action", doWord(fields.action))} the ${mark("component", thingName(fields).toLowerCase())}${what}${due}${cost}`,
    fields.fault === null ? "" : capital(phrase(fields.fault)),
  );
};

/** One record as a person would say it. */
export const recordLine = (record: KeptRecord, context: LineContext): string => {
  const mark = marker(context.doubts);
  switch (record.fields.kind) {
    case "repair":
      return repairLine(record, context, mark);
    case "check":
      return checkLine(record, context, mark);
    case "fault":
      return faultLine(record, context, mark);
    case "todo":
      return todoLine(record, context, mark);
  }
};
