import type { Draft } from "../../shared/reading.ts";
import type { Field } from "../../shared/record.ts";

/** Below this the reply asks instead of asserting. */
const SURE_ENOUGH = 0.6;
const ASKED_ABOUT: readonly Field[] = ["component", "action", "date", "outcome", "materials", "cost", "due"];

export const doubtsOf = ({ evidence }: Draft): readonly Field[] =>
  ASKED_ABOUT.filter((field) => {
    const given = evidence[field];
    return given !== undefined && given.sure < SURE_ENOUGH;
  });
