import type { Edtf } from "../../shared/record.ts";
import type { TimeRef } from "./scan.ts";

/** Whether a time may say when something was done. */
export const isPastPoint = ({ time }: TimeRef, today: Edtf): boolean =>
  (time.role === "point" || time.role === "after-that") &&
  time.edtf.slice(0, 4) <= today.slice(0, 4) &&
  time.direction !== "future";
