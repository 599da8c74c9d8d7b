import type { Intent } from "../../shared/memory/intent.ts";

/** A note, read as it was said. */
export const TELLS: Extract<Intent, { is: "tell" }> = {
  is: "tell",
  read: null,
  again: null,
  about: null,
  after: null,
  maybe: [],
  rest: null,
};
