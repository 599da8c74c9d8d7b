import { findTemperature, temperatureAnswered } from "../../nlp/temperature.ts";
import { findNumbers } from "../../nlp/time/index.ts";
import { isBareNumber } from "../../nlp/understand/bare-number.ts";
import { usualDegrees } from "../rig/degrees.ts";
import { planReady } from "./curing.ts";
import { decideFor } from "./decide.ts";
import { type Asked, askedIn, heardBack } from "./pending.ts";
import type { ToldNote } from "./told.ts";
import type { Turn } from "./turn.ts";

/** "No it was nine": what was told before is put right, a price as a rule. */
const DENIES = /^\s*(?:no|nope|nah|wait|sorry|oops|actually|make (?:it|that)|not)\b/i;

const temperatureHeard = (
  turn: Turn,
  asked: Extract<Asked, { is: "temperature" }>,
  text: string,
): boolean => {
  const record = turn.store.history.record(asked.record);
  const usual = usualDegrees(turn.rig);
  const tempC = DENIES.test(text) ? findTemperature(text, usual) : temperatureAnswered(text, usual);
  if (record === undefined || tempC === undefined) return false;
  const words = planReady(turn, record, tempC);
  if (words === undefined) return false;
  heardBack(turn);
  turn.say({ text: words });
  return true;
};

/** "A new one is 260": the one is no figure. */
const A_SINGLE = 1;

const figureHeard = (turn: Turn, asked: Extract<Asked, { is: "number" }>, text: string): boolean => {
  const numbers = findNumbers(text);
  const number = numbers.find(({ value }) => value !== A_SINGLE) ?? numbers[0];
  if (number === undefined) return false;
  heardBack(turn);
  decideFor(turn, asked.component, { ...asked.given, [asked.wanted]: number.value });
  return true;
};

/** Takes the number that the bot has just asked for, when the message is one. */
export const numberHeard = (turn: Turn, { text }: ToldNote): boolean => {
  const asked = askedIn(turn);
  if (asked === null || !isBareNumber(text)) return false;
  if (asked.is === "temperature") return temperatureHeard(turn, asked, text);
  return asked.is === "number" && figureHeard(turn, asked, text);
};
