import type { Moment } from "../../shared/reading.ts";

const MOST = 8;

/** The same work on the same words at the same moment, done once: on its way to a reply a message is read several times. */
export const remembered = <T>(
  work: (text: string, moment: Moment) => T,
): ((text: string, moment: Moment) => T) => {
  const known = new Map<string, T>();
  return (text, moment) => {
    const key = [moment.said, moment.zone, moment.hemisphere, text].join("\n");
    const before = known.get(key);
    if (before !== undefined) return before;
    const result = work(text, moment);
    known.set(key, result);
    const [oldest] = known.keys();
    if (known.size > MOST && oldest !== undefined) known.delete(oldest);
    return result;
  };
};
