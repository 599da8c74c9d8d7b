import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import {
  CARE_ROWS,
  type CareChoice,
  type CareDue,
  type CareRow,
  careDue,
} from "../../shared/outlook/index.ts";
import type { Store } from "../../store/store.ts";
import { outlookRig } from "./outlook-rig.ts";
import type { Rig } from "./rig.ts";

export const CARE_KEY = "care.choices";

const day = z.string();
const choiceSchema = z.object({
  row: z.string(),
  since: day,
  done: day.nullable().default(null),
  notBefore: day.nullable().default(null),
  /** The day of the last nudge that was not answered yet. */
  nudgedOn: day.nullable().default(null),
});
export type KeptChoice = z.infer<typeof choiceSchema>;

export const keptChoices = (store: Store): readonly KeptChoice[] =>
  z.array(choiceSchema).default([]).parse(store.settings.get(CARE_KEY));

const toDay = (text: string | null): Temporal.PlainDate | null =>
  text === null ? null : Temporal.PlainDate.from(text);

const asChoice = ({ row, since, done, notBefore }: KeptChoice): CareChoice => ({
  row,
  since: Temporal.PlainDate.from(since),
  done: toDay(done),
  notBefore: toDay(notBefore),
});

const KNOWN = new Set(CARE_ROWS.map(({ id }) => id));

/** When each row of standing care that is switched on falls due, soonest first. */
export const careAhead = (here: {
  readonly store: Store;
  readonly rig: Rig;
  readonly today: Temporal.PlainDate;
}): readonly CareDue[] => {
  const choices = keptChoices(here.store).filter(({ row }) => KNOWN.has(row));
  if (choices.length === 0) return [];
  const { use, trip, hemisphere } = outlookRig(here);
  const components = [...new Set(CARE_ROWS.flatMap((row) => row.components))];
  return careDue({
    choices: choices.map(asChoice),
    records: here.store.history.records({ components, kinds: ["repair", "check"] }),
    use,
    trip,
    hemisphere,
  });
};

/** Whether this due day was not asked about yet. */
export const isCareUnasked = (store: Store, { row, due }: CareDue): boolean => {
  const nudgedOn = keptChoices(store).find((choice) => choice.row === row.id)?.nudgedOn ?? null;
  return nudgedOn === null || due.toString() > nudgedOn;
};

export const careNudged = (store: Store, rows: readonly CareRow["id"][], today: string): void => {
  const choices = keptChoices(store).map((choice) =>
    rows.includes(choice.row) ? { ...choice, nudgedOn: today } : choice,
  );
  if (rows.length > 0) store.settings.put(CARE_KEY, choices);
};
