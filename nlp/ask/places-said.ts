import { topicOf } from "./topic.ts";

const ROOMS =
  /\b(?:bathroom|bath|kitchen|galley|bedroom|bunk(?:house| room)?|lounge|living room|hall(?:way)?|outside)\b/;

const SIDE =
  "front|rear|back|left|right|upper|lower|nearside|offside|curbside|kerbside|roadside|streetside|starboard";
const FIRST = `(?:${SIDE}|driver|drivers|passenger|curb|kerb|street|road|near|off|port(?= side))`;
const ENDS = new RegExp(`\\b${FIRST}(?: (?:(?:${SIDE})|side|corner)\\b)*\\b`);

/** The side, end or room that a text names, in its own words: "the rear stabilizer", "the bathroom tap". */
export const placesSaid = (text: string): string | null => {
  if (topicOf(text).where.length === 0) return null;
  const said = text.toLowerCase();
  return ENDS.exec(said)?.[0] ?? ROOMS.exec(said)?.[0] ?? null;
};

export const ALL_ENDS = new RegExp(ENDS, "g");
