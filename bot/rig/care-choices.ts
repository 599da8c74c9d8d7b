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
import { happenedOn } from "./happened.ts";
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

type Here = { readonly store: Store; readonly rig: Rig; readonly today: Temporal.PlainDate };

/** When each row of standing care that is switched on falls due, soonest first. */
export const careAhead = (here: Here): readonly CareDue[] => {
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
    happened: happenedOn(here.store),
  });
};

/** Care is asked about once a week at most, so that switching it all on floods nobody. */
const CARE_REST = { days: 7 };
const LAST_CARE_KEY = "care.last-day";

const restsUntil = (store: Store): Temporal.PlainDate | undefined => {
  const last = day.optional().parse(store.settings.get(LAST_CARE_KEY));
  return last === undefined ? undefined : Temporal.PlainDate.from(last).add(CARE_REST);
};

const isUnasked = (store: Store, { row, due }: CareDue): boolean => {
  const nudgedOn = keptChoices(store).find((choice) => choice.row === row.id)?.nudgedOn ?? null;
  return nudgedOn === null || due.toString() > nudgedOn;
};

/** The care that was not asked about yet, each with the first day on which it may be. */
export const careToAsk = (
  here: Here,
): readonly { readonly care: CareDue; readonly day: Temporal.PlainDate }[] => {
  const rest = restsUntil(here.store);
  return careAhead(here)
    .filter((care) => isUnasked(here.store, care))
    .map((care) => ({
      care,
      day: rest !== undefined && Temporal.PlainDate.compare(rest, care.due) > 0 ? rest : care.due,
    }));
};

export const careNudged = (store: Store, rows: readonly CareRow["id"][], today: string): void => {
  if (rows.length === 0) return;
  const choices = keptChoices(store).map((choice) =>
    rows.includes(choice.row) ? { ...choice, nudgedOn: today } : choice,
  );
  store.settings.put(CARE_KEY, choices);
  store.settings.put(LAST_CARE_KEY, today);
};
