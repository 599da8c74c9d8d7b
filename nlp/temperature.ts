import { findNumbers } from "./time/index.ts";

export type Scale = "fahrenheit" | "celsius";

const AFTER = /^\s*(?:degrees?|degs?|°|º)?\s*(fahrenheit|celsius|centigrade|f|c)?\b/i;
const NAMED = /^\s*(?:degrees?|degs?|°|º)/i;

const toCelsius = (value: number, scale: Scale): number =>
  scale === "fahrenheit" ? ((value - 32) * 5) / 9 : value;

const scaleOf = (word: string | undefined, usual: Scale): Scale => {
  if (word === undefined) return usual;
  return word.toLowerCase().startsWith("f") ? "fahrenheit" : "celsius";
};

/** The temperature that a text names, in °C; undefined when it names none. */
export const findTemperature = (text: string, usual: Scale): number | undefined => {
  for (const { span, value } of findNumbers(text)) {
    const rest = text.slice(span.end);
    const unit = AFTER.exec(rest)?.[1];
    if (NAMED.test(rest) || unit !== undefined) return toCelsius(value, scaleOf(unit, usual));
  }
  return undefined;
};

/** "That's the one" is no degree. */
const ONE = /^one$/i;

/** The temperature in an answer that is little more than a number, in °C. */
export const temperatureAnswered = (text: string, usual: Scale): number | undefined => {
  const number = findNumbers(text).find(({ span }) => !ONE.test(text.slice(span.start, span.end)));
  return findTemperature(text, usual) ?? (number && toCelsius(number.value, usual));
};
