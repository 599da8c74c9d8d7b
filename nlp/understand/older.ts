import type { Moment } from "../../shared/reading.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { mentionsIn } from "../ask/names.ts";
import { scan } from "../read/scan.ts";

/** As many records as a message may be about are looked at: of each thing that it names, and of the latest of all. */
export const OLDER = { ofThing: 6, latest: 10 } as const;
/** As many things as are looked up for one message. */
const MOST = 4;

/** The things that a message names, by any name: it may be about any record of them, however old. */
export const thingsIn = (text: string, moment: Moment): readonly ComponentId[] => {
  const { components, tokens } = scan(text, moment);
  const nicknamed = mentionsIn(tokens.map(({ norm }) => norm)).flatMap(({ named }) =>
    named.slice(0, 2).map(({ component }) => component),
  );
  return [...new Set([...components.map(({ id }) => id), ...nicknamed])].slice(0, MOST);
};
