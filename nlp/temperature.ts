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

/**
 * The temperature that a text names, in °C; undefined when it names none. A bare number counts only when the whole text
 * is little more than that number.
 */
export const findTemperature = (text: string, usual: Scale): number | undefined => {
  for (const { span, value } of findNumbers(text)) {
    const rest = text.slice(span.end);
    const unit = AFTER.exec(rest)?.[1];
    const isBare = text.trim().split(/\s+/).length <= 5;
    if (NAMED.test(rest) || unit !== undefined || isBare) return toCelsius(value, scaleOf(unit, usual));
  }
  return undefined;
};
