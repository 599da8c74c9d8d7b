import type { Temporal } from "temporal-polyfill";
import type { KeptRecord, RecordId } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { CareRow } from "./care-table.ts";
import type { Day } from "./days.ts";
import type { Happening } from "./happening.ts";
import type { Trip, Use } from "./use.ts";

/** A row that is switched on. */
export type CareChoice = {
  readonly row: CareRow["id"];
  readonly since: Temporal.PlainDate;
  /** Last time it was answered as done, without a record of the work. */
  readonly done?: Temporal.PlainDate | null;
  readonly notBefore?: Temporal.PlainDate | null;
};

export type CareReason = "time" | "use" | "season" | "trip" | "work" | "event" | "never";

export type CareDue = {
  readonly row: CareRow;
  readonly due: Temporal.PlainDate;
  readonly reason: CareReason;
  readonly lastDone: Temporal.PlainDate | null;
  /** The record that counts as the last time. */
  readonly lastRecord: RecordId | null;
  /** Why now, in one sentence. */
  readonly why: string;
};

export type CareInput = {
  readonly choices: readonly CareChoice[];
  readonly records: readonly KeptRecord[];
  readonly use: Use;
  readonly trip: Trip | null;
  readonly hemisphere: Hemisphere;
  /** The last time that each of these happened, as far as it was told. */
  readonly happened?: ReadonlyMap<Happening, Temporal.PlainDate>;
};

export type Done = { readonly day: Day; readonly record: RecordId | null };
export type Candidate = { readonly day: Day; readonly reason: CareReason; readonly why: string };
