import { topicOf } from "./topic.ts";

const ENDS =
  /\b(?:(?:front|rear|back|left|right|upper|lower|driver|drivers|passenger|curb|kerb|street|road|near|off|nearside|offside)(?: (?:left|right|side|corner))?)\b/;

/** The side or end that a text names, in its own words: "the rear stabilizer". */
export const placesSaid = (text: string): string | null =>
  topicOf(text).where.length === 0 ? null : (ENDS.exec(text.toLowerCase())?.[0] ?? null);

export const ALL_ENDS = new RegExp(ENDS, "g");
