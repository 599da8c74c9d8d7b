import type { Edtf } from "../../shared/record.ts";
import type { Context } from "./told.ts";
import type { Places } from "./where.ts";

/** What making a record needs besides what was told of it. */
export type Build = Context & { readonly places: Places; readonly today: Edtf; readonly muted: Uint8Array };
