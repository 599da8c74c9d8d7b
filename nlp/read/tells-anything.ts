import type { Moment } from "../../shared/reading.ts";
import { read } from "./index.ts";

/** Whether the reader finds work, a look, a fault, a plan or use of the rig in a text. */
export const tellsAnything = (text: string, moment: Moment): boolean => {
  const { records, usage } = read(text, moment);
  return records.length + usage.length > 0;
};
