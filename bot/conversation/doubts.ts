import type { Draft } from "../../shared/reading.ts";
import type { Field } from "../../shared/record.ts";

/** Below this the reply asks instead of asserting. */
const SURE_ENOUGH = 0.6;
const ASKED_ABOUT: readonly Field[] = ["component", "action", "date", "outcome", "materials", "cost", "due"];

/** Whether the record claims something in that field. */
const claims = ({ fields }: Draft, field: Field): boolean => {
  const value = fields[field];
  return value !== null && value !== "untested" && !(Array.isArray(value) && value.length === 0);
};

/** The claims of which the reader is not sure. */
export const doubtsOf = (draft: Draft): readonly Field[] =>
  ASKED_ABOUT.filter((field) => {
    const given = draft.evidence[field];
    return given !== undefined && given.sure < SURE_ENOUGH && claims(draft, field);
  });
