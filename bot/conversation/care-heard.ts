import { topicOf } from "../../nlp/ask/topic.ts";
import { careAnswerIn, careIn } from "../../nlp/understand/care.ts";
import { seenToIn } from "../../nlp/understand/seen-to.ts";
import { type CareRow, careNamed } from "../../shared/outlook/index.ts";
import { careOffer, carePage, intervals, rowLine } from "../replies/care.ts";
import { keptChoices } from "../rig/care-choices.ts";
import { careDone, offerCare, switchAll, switchRow } from "./care.ts";
import { pendingIn } from "./pending.ts";
import type { ToldNote } from "./told.ts";
import type { Turn } from "./turn.ts";

const lastText = ({ store, chat }: Turn): string => {
  const text = store.outbox.lastSaid(chat.channel, chat.chatId)?.payload["text"];
  return typeof text === "string" ? text : "";
};

/** Whether the last that was said here was about standing care. */
const isCareShown = (turn: Turn): boolean => /\bstanding care\b/i.test(lastText(turn));

const answered = (turn: Turn, text: string): boolean => {
  if (!lastText(turn).endsWith(careOffer().text)) return false;
  switch (careAnswerIn(text)) {
    case "all":
      turn.say(switchAll(turn, true));
      return true;
    case "pick":
      turn.say(carePage(turn, 0));
      return true;
    case "none":
      turn.say({ text: "Fine. Say “care” whenever you want them." });
      return true;
    case undefined:
      return false;
  }
};

const MOST_NAMED = 4;
const SURE = 0.6;

const rowsNamed = (about: string): readonly CareRow[] => {
  const named = topicOf(about).named.filter(({ sure }) => sure >= SURE);
  return careNamed(
    about,
    named.map(({ component }) => component),
  );
};

const switchRows = (turn: Turn, rows: readonly CareRow[], on: boolean): void => {
  for (const { id } of rows) switchRow(turn, id, on);
  const lines = rows.map((row) => `${on ? "On" : "Off"}: ${rowLine(row)}, ${intervals(row)}.`);
  turn.say({
    text: lines.join("\n"),
    buttons: [[{ label: "Undo", tap: { tap: "undo", turn: turn.turnId } }]],
  });
};

const someHeard = (turn: Turn, about: string, on: boolean): boolean => {
  const rows = rowsNamed(about);
  if (rows.length > 0 && rows.length <= MOST_NAMED) {
    switchRows(turn, rows, on);
    return true;
  }
  return false;
};

/** The rows that the last nudge in this chat asked about and nobody has answered, by their number in it. */
const rowsAsked = ({ store, chat }: Turn): ReadonlyMap<number, CareRow["id"]> => {
  const shows = store.outbox.lastShown(chat.channel, chat.chatId, "nudge")?.shows;
  const waiting = new Set(
    keptChoices(store).flatMap(({ row, nudgedOn }) => (nudgedOn === null ? [] : [row])),
  );
  const numbered = (shows?.care ?? []).map(
    (row, at) => [(shows?.records.length ?? 0) + at + 1, row] as const,
  );
  return new Map(numbered.filter(([, row]) => waiting.has(row)));
};

/** "Done", "all done", "1 and 3 done, the rest later" to a nudge about care. */
const seenTo = (turn: Turn, text: string): boolean => {
  const asked = rowsAsked(turn);
  const said = asked.size === 0 || pendingIn(turn)?.is === "which-record" ? undefined : seenToIn(text);
  if (said === undefined) return false;
  const lines = [...asked].flatMap(([number, row]) => {
    const answer = said.numbers.get(number) ?? said.rest;
    return answer === null ? [] : [careDone(turn, row, answer)];
  });
  if (lines.length === 0) return false;
  turn.say({
    text: lines.join("\n"),
    buttons: [[{ label: "Undo", tap: { tap: "undo", turn: turn.turnId } }]],
  });
  return true;
};

/** Standing care in words: the list, all of it, or the checks of what is named, on or off; answers to what was asked. */
export const careHeard = (turn: Turn, { text }: ToldNote): boolean => {
  if (answered(turn, text) || seenTo(turn, text)) return true;
  const wish = careIn(text);
  if (wish === undefined) return false;
  switch (wish.care) {
    case "show":
      if (keptChoices(turn.store).length === 0) offerCare(turn);
      else turn.say(carePage(turn, 0));
      return true;
    case "all":
      turn.say(switchAll(turn, wish.on));
      return true;
    case "some":
      return (wish.surely || isCareShown(turn)) && someHeard(turn, wish.about, wish.on);
  }
};
