import { EMPTY_TOPIC, type Query } from "../../shared/memory/query.ts";
import { ask } from "./ask.ts";
import { offerCare } from "./care.ts";
import { greet, help } from "./greet.ts";
import { pairingCode } from "./pair.ts";
import type { Turn } from "./turn.ts";
import { undoLast } from "./undo.ts";

const asking = (query: Query) => (turn: Turn) => ask(turn, query);

const pairAnother = (turn: Turn): void => {
  turn.say({
    text: `On the other phone, open the bot and send this code: ${pairingCode(turn.store)}\nIt works once.`,
  });
};

type Command = { readonly name: string; readonly description: string; readonly run: (turn: Turn) => void };

export const COMMANDS: readonly Command[] = [
  {
    name: "open",
    description: "What is open",
    run: asking({ ask: "open", topic: EMPTY_TOPIC, period: null }),
  },
  { name: "buy", description: "What to buy", run: asking({ ask: "buy", topic: EMPTY_TOPIC }) },
  {
    name: "due",
    description: "What is due for a look",
    run: asking({ ask: "due", topic: EMPTY_TOPIC, period: null }),
  },
  { name: "care", description: "Checks that come round", run: offerCare },
  { name: "undo", description: "Take back the last change", run: (turn) => undoLast(turn, "work") },
  { name: "pair", description: "Pair another phone", run: pairAnother },
  { name: "help", description: "What to say", run: help },
];

const PAIRING_WORDS =
  /^(?:please )?pair (?:another|a second|a new|my \w+'?s?|the other) (?:phone|person|one|tablet)\W*$/i;

/** Runs a slash command, when the message is one. */
export const commandIn = (turn: Turn, text: string): boolean => {
  const name = /^\/([a-z]+)(?:@\w+)?\s*$/i.exec(text.trim())?.[1]?.toLowerCase();
  if (name === "start" || /^\/start\b/i.test(text)) {
    greet(turn);
    return true;
  }
  const command = COMMANDS.find((each) => each.name === name);
  if (command === undefined && !PAIRING_WORDS.test(text.trim())) return false;
  (command?.run ?? pairAnother)(turn);
  return true;
};
