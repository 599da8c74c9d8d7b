import type { Edtf } from "../../shared/record.ts";
import type { Deed } from "./deed.ts";
import type { TimeRef } from "./scan.ts";
import type { Context } from "./told.ts";
import type { Places } from "./where.ts";

/** What making a record needs besides what was told of it. */
export type Build = Context & {
  readonly places: Places;
  readonly today: Edtf;
  readonly muted: Uint8Array;
  /** The times and deeds of the whole note that are told as ours and now. */
  readonly times: readonly TimeRef[];
  readonly deeds: readonly Deed[];
  /** The tokens at which amounts start that tell use of the rig itself, with how sure that is, from 0 to 1. */
  readonly ofRig: ReadonlyMap<number, number>;
};
