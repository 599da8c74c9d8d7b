import type { Exposure } from "../../shared/record.ts";
import type { Action } from "../../shared/vocabulary.ts";
import actionWords from "./action-words.json" with { type: "json" };

export const doneWord = (action: Action | null): string =>
  action === null ? "worked on" : actionWords[action].done;
export const doWord = (action: Action | null): string =>
  action === null ? "see to" : actionWords[action].do;

const LIST = new Intl.ListFormat("en-GB", { style: "long", type: "conjunction" });

/** "a, b and c" */
export const listed = (items: readonly string[]): string => LIST.format(items);

const SINGULAR: Partial<Record<Exposure["unit"], string>> = { miles: "mile", km: "km", days: "day" };

const TO_A_TENTH = new Intl.NumberFormat("en-US", { maximumFractionDigits: 1 });

export const sayCount = (count: number): string => TO_A_TENTH.format(count);

export const sayExposure = ({ count, unit }: Exposure): string =>
  `${sayCount(count)} ${count === 1 ? (SINGULAR[unit] ?? unit.replace(/s$/, "")) : unit}`;

export const plural = (count: number, one: string, many = `${one}s`): string =>
  `${sayCount(count)} ${count === 1 ? one : many}`;

/** Keeps a quotation to one line of a phone. */
export const shortened = (text: string, length: number): string => {
  const line = text.replace(/\s+/g, " ").trim();
  return line.length <= length ? line : `${line.slice(0, length - 1).trimEnd()}…`;
};
