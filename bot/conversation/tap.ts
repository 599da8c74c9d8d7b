import type { Shown } from "../../store/outbox.ts";
import { type Nudged, nudgeAnswered } from "../replies/nudge.ts";
import { thingName } from "../replies/record-line.ts";
import { type LookAnswer, parseTap, type Tap } from "./buttons.ts";
import { careDone, switchCare } from "./care.ts";
import type { Incoming } from "./incoming.ts";
import { tickLine } from "./leaving-list.ts";
import { OLD_BUTTON } from "./old-button.ts";
import { waitFor } from "./pending.ts";
import { picked } from "./pick.ts";
import { settle } from "./tick.ts";
import type { Reply, Turn } from "./turn.ts";
import { undoTurn } from "./undo.ts";
import { GONE, takeVerdict } from "./verdict.ts";
import { sayWords } from "./words.ts";

type TapIn = Extract<Incoming, { is: "tap" }>;

/** Rewrites the message that carried the button, or says it anew when that message is not ours any more. */
const rewrite = (turn: Turn, tap: TapIn, reply: Reply): void => {
  const carrier = turn.store.outbox.shownBy(turn.chat.channel, turn.chat.chatId, tap.messageId);
  if (carrier === undefined) turn.say(reply);
  else turn.edit(carrier.edits ?? carrier.id, { ...reply, shows: { ...carrier.shows, ...reply.shows } });
};

const carried = (turn: Turn, tap: TapIn): Shown | undefined =>
  turn.store.outbox.shownBy(turn.chat.channel, turn.chat.chatId, tap.messageId)?.shows;

const nudgedBy = (turn: Turn, tap: TapIn, record: readonly number[], row: readonly string[]): Nudged => {
  const shows = carried(turn, tap);
  return shows?.of === "nudge" ? shows : { records: record, care: row };
};

const judgeLooks = (turn: Turn, tap: TapIn, records: readonly number[], answer: LookAnswer): void => {
  const lines = takeVerdict(turn, records, answer, null);
  if (lines.size === 0) rewrite(turn, tap, { text: GONE });
  else rewrite(turn, tap, nudgeAnswered(turn, nudgedBy(turn, tap, records, []), lines));
};

const stillAsked = (turn: Turn, tap: TapIn): readonly number[] =>
  (carried(turn, tap)?.records ?? []).filter((id) => turn.store.looks.of(id)?.nudgedAt != null);

const seeTo = (turn: Turn, tap: TapIn, row: string, answer: "done" | "later"): void => {
  const line = careDone(turn, row, answer);
  rewrite(turn, tap, nudgeAnswered(turn, nudgedBy(turn, tap, [], [row]), new Map([[row, line]])));
};

const settleRecord = (turn: Turn, record: number): Reply => {
  const [ticked] = settle(turn, [record]);
  if (ticked === undefined) return { text: "That is ticked off already." };
  return {
    text: `Ticked off: ${thingName(ticked.fields)}.`,
    buttons: [[{ label: "Undo", tap: { tap: "undo", turn: turn.turnId } }]],
  };
};

const act = (turn: Turn, tapIn: TapIn, tap: Tap): void => {
  switch (tap.tap) {
    case "look":
      return judgeLooks(turn, tapIn, [tap.record], tap.answer);
    case "looks":
      return judgeLooks(turn, tapIn, stillAsked(turn, tapIn), tap.answer);
    case "undo":
      return undoTurn(turn, tap.turn);
    case "right":
      return void turn.say({ text: "Good, then it stays as it is." });
    case "wrong":
      waitFor(turn, { is: "settle-field", record: tap.record });
      return void turn.say({
        text: "What should it be? Just say it, like “the black tank” or “that was last Tuesday”.",
        shows: { of: "note", records: [tap.record] },
      });
    case "pick":
      return picked(turn, [tap.record]);
    case "none":
      return picked(turn, []);
    case "settle":
      return void turn.say(settleRecord(turn, tap.record));
    case "tick":
      return tickLine(turn, tap.line, (reply) => rewrite(turn, tapIn, reply));
    case "care":
      return switchCare(turn, tap.row, tap.on, (reply) => rewrite(turn, tapIn, reply));
    case "seen":
      return seeTo(turn, tapIn, tap.row, tap.answer);
    case "words":
      return sayWords(turn, tap.note);
  }
};

/** A tapped button; unknown data gets a clear word and changes nothing. */
export const tapped = (turn: Turn, tapIn: TapIn): void => {
  const tap = parseTap(tapIn.data);
  turn.acknowledge(tapIn.tapId);
  if (tap === undefined) turn.say({ text: OLD_BUTTON });
  else act(turn, tapIn, tap);
};
