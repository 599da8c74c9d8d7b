import type { KeptRecord } from "../../../../shared/history.ts";
import { type Day, dayOf } from "../../../../shared/outlook/days.ts";
import { type Outlook, outlookOf, type Rig } from "../../../../shared/outlook/index.ts";

/** What a keeper's notes say of one fix and its surroundings on a day. */
export type Told = {
  readonly record: KeptRecord;
  readonly line: () => readonly KeptRecord[];
  readonly all: readonly KeptRecord[];
  readonly lastLook: Day;
  readonly rig: () => Rig;
};

export type Answer = { readonly due: Day; readonly outlook: Outlook | undefined };

/** Says when to look next. */
export type Policy = (told: Told) => Answer;

const ask = (told: Told, line: readonly KeptRecord[], peers: readonly KeptRecord[]): Answer => {
  const outlook = outlookOf({ ...told.rig(), record: told.record, line, peers });
  if (outlook === undefined) throw new Error("A live fix has no outlook.");
  return { due: dayOf(outlook.nextLook.day), outlook };
};

export const learning: Policy = (told) => ask(told, told.line(), told.all);
export const fromOwnLine: Policy = (told) => ask(told, told.line(), []);
export const unlearned: Policy = (told) => ask(told, [told.record], []);
export const everyDays =
  (days: number): Policy =>
  ({ lastLook }) => ({ due: lastLook + days, outlook: undefined });
