import data from "./grammar.json" with { type: "json" };
import rules from "./word-lists.json" with { type: "json" };

/** The words that one rule looks at. */
export const listed = (name: keyof typeof rules.lists): ReadonlySet<string> => new Set(rules.lists[name]);

/** Closed word classes, as sets. */
export const SUBJECTS: ReadonlySet<string> = new Set(data.subjects);
export const PEOPLE: ReadonlySet<string> = new Set(data.people);
export const BREAKERS: ReadonlySet<string> = new Set(data.breakers);
export const NOT_BREAK_SO: ReadonlySet<string> = new Set(data.notBreakSo);
export const SUBORDINATORS: ReadonlySet<string> = new Set(data.subordinators);
export const DETERMINERS: ReadonlySet<string> = new Set(data.determiners);
export const PREPOSITIONS: ReadonlySet<string> = new Set(data.prepositions);
export const AUXILIARIES: ReadonlySet<string> = new Set(data.auxiliaries);
export const NEGATIVES: ReadonlySet<string> = new Set(data.negatives);
export const TO_DONE: ReadonlySet<string> = new Set(data.toDone);
export const PERFECT: ReadonlySet<string> = new Set(data.perfect);
export const USE_VERBS: ReadonlySet<string> = new Set(data.useVerbs);
export const GENERIC_PARTS: ReadonlySet<string> = new Set(data.genericParts);

const CLOSED = [AUXILIARIES, BREAKERS, DETERMINERS, NEGATIVES, PREPOSITIONS, SUBJECTS];
/** Whether a word only holds others together, and names nothing. */
export const isClosed = (word: string): boolean => CLOSED.some((words) => words.has(word));
