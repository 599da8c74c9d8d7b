const AS_OBJECT: ReadonlyMap<string, string> = new Map([
  ["he", "him"],
  ["himself", "him"],
  ["she", "her"],
  ["herself", "her"],
  ["they", "them"],
]);
const AS_SUBJECT: ReadonlyMap<string, string> = new Map([
  ["himself", "he"],
  ["herself", "she"],
]);

const told = (who: string): string => who.replace(/^(?:my|our|me)\b(?= )/u, "your");

/** Whoever did the work, as said by the owner and told back: "your cousin" did it. */
export const whoDid = (who: string): string => AS_SUBJECT.get(who) ?? told(who);

/** "By your cousin", "by him". */
export const byWhom = (who: string): string => AS_OBJECT.get(who) ?? told(who);
