import { stemOf } from "../../shared/memory/words.ts";
import type { Scan } from "./scan.ts";

/** The signs, as names, that tell whether a note tells anything at all: its words, and each with the one after it. */
export const noteSigns = ({ tokens }: Scan): string[] => {
  const stems = tokens.filter(({ kind }) => kind !== "mark").map(({ norm }) => stemOf(norm));
  return [...new Set([...stems, ...stems.slice(1).map((stem, at) => `${stems[at] ?? ""} ${stem}`)])];
};
