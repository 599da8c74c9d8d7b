import data from "./stuff-words.json" with { type: "json" };

const CONTAINERS: ReadonlySet<string> = new Set(data.containers);

/** Whether the word is only what stuff comes in or from: "the tin had run out", "out of the shed". */
export const isContainer = (word: string): boolean => CONTAINERS.has(word);
