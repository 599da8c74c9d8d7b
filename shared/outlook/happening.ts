import { z } from "zod";

/** What happens to a trailer that calls for care out of turn. */
export const HAPPENINGS = [
  "hail",
  "thunder",
  "gale",
  "rain",
  "fall",
  "knock",
  "flood",
  "blowout",
  "unstored",
  "storing",
  "frost",
] as const;
export const happeningSchema = z.enum(HAPPENINGS);
export type Happening = z.infer<typeof happeningSchema>;

const WORDS: Record<Happening, string> = {
  hail: "the hail",
  thunder: "the thunderstorm",
  gale: "the high wind",
  rain: "the heavy rain",
  fall: "what came down on the roof",
  knock: "the knock to the wheels",
  flood: "the drive through water",
  blowout: "the blow-out",
  unstored: "its time in storage",
  storing: "putting it into storage",
  frost: "the frost ahead",
};

/** "the hail", as it follows "after". */
export const happeningWords = (what: Happening): string => WORDS[what];
