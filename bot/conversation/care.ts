import { CARE_ROWS, type CareRow } from "../../shared/outlook/index.ts";
import { careOffer, carePage, rowLine } from "../replies/care.ts";
import { CARE_KEY, type KeptChoice, keptChoices } from "../rig/care-choices.ts";
import type { Reply, Turn } from "./turn.ts";

const keep = (turn: Turn, choices: readonly KeptChoice[]): void =>
  turn.keeper.setSetting(CARE_KEY, JSON.stringify(choices));

const fresh = (turn: Turn, row: CareRow["id"]): KeptChoice => ({
  row,
  since: turn.today.toString(),
  done: null,
  notBefore: null,
  nudgedOn: null,
});

const change = (turn: Turn, key: CareRow["id"], to: Partial<KeptChoice>): void =>
  keep(
    turn,
    keptChoices(turn.store).map((choice) => (choice.row === key ? { ...choice, ...to } : choice)),
  );

export const switchRow = (turn: Turn, row: CareRow["id"], on: boolean): void => {
  const others = keptChoices(turn.store).filter((choice) => choice.row !== row);
  const kept = keptChoices(turn.store).find((choice) => choice.row === row);
  keep(turn, on ? [...others, kept ?? fresh(turn, row)] : others);
};

export const switchAll = (turn: Turn, on: boolean): Reply => {
  const kept = new Map(keptChoices(turn.store).map((choice) => [choice.row, choice]));
  keep(turn, on ? CARE_ROWS.map(({ id }) => kept.get(id) ?? fresh(turn, id)) : []);
  const text = on
    ? `All ${CARE_ROWS.length} are on. I spread the first ones out and never ask more than a few at once. Say “care” to change them, or “no more awning checks”.`
    : "All standing care is off. Say “care” to bring some back.";
  return { text, buttons: [[{ label: "Undo", tap: { tap: "undo", turn: turn.turnId } }]] };
};

const pageOf = (key: string): number | undefined => {
  const page = /^page\.(\d{1,2})$/.exec(key)?.[1];
  return page === undefined ? undefined : Number(page);
};

/** A tap on the care list: all of it, a page of it, or one row. */
export const switchCare = (turn: Turn, key: string, on: boolean, rewrite: (reply: Reply) => void): void => {
  if (key === "all") return rewrite(switchAll(turn, on));
  const page = pageOf(key);
  if (page !== undefined) return rewrite(carePage(turn, page));
  const index = CARE_ROWS.findIndex(({ id }) => id === key);
  if (index < 0) return rewrite({ text: "I don't know that one any more. Say “care” to see the list." });
  switchRow(turn, key, on);
  rewrite(carePage(turn, index));
};

/** Offers the recurring checks of a towed trailer; never forces them. */
export const offerCare = (turn: Turn): void => {
  turn.say(careOffer());
};

/** Marks a row that is switched on as done today. */
export const markCareDone = (turn: Turn, key: CareRow["id"]): void => {
  change(turn, key, { done: turn.today.toString(), notBefore: null, nudgedOn: null });
};

/** Takes back that a row was done today. */
export const careUndone = (turn: Turn, key: CareRow["id"]): void => {
  const kept = keptChoices(turn.store).find((choice) => choice.row === key);
  if (kept?.done === turn.today.toString()) change(turn, key, { done: null });
};

/** A row was seen to: its next time counts from today. Returns one line. */
export const careDone = (turn: Turn, key: CareRow["id"], answer: "done" | "later"): string => {
  const row = CARE_ROWS.find(({ id }) => id === key);
  if (row === undefined || !keptChoices(turn.store).some((choice) => choice.row === key))
    return "That one is not on the list any more.";
  if (answer === "done") markCareDone(turn, key);
  else change(turn, key, { notBefore: turn.today.add({ days: 7 }).toString(), nudgedOn: null });
  return answer === "done" ? `${rowLine(row)}: done.` : `${rowLine(row)}: I ask again in a week.`;
};
