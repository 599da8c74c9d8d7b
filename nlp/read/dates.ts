import { Temporal } from "temporal-polyfill";
import type { Moment } from "../../shared/reading.ts";
import type { Edtf } from "../../shared/record.ts";
import type { Clause } from "./clauses.ts";
import type { Scan, Stretch, TimeRef } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { listed } from "./words.ts";

export type Dated = { readonly edtf: Edtf | null; readonly spans: readonly Stretch[]; readonly rule: string };

/** The civil day on which a note was said, where it was said. */
export const saidDay = ({ said, zone }: Moment): Edtf =>
  Temporal.Instant.from(said).toZonedDateTimeISO(zone).toPlainDate().toString();

const within = (time: TimeRef, clause: Clause | undefined): boolean =>
  clause !== undefined && time.from >= clause.from && time.to <= clause.to;

const isPast = (time: TimeRef, today: Edtf): boolean =>
  time.time.edtf.slice(0, 4) <= today.slice(0, 4) && time.time.direction !== "future";

const dateTimes = (told: Told, today: Edtf): TimeRef[] =>
  told.times.filter(
    (time) => (time.time.role === "point" || time.time.role === "after-that") && isPast(time, today),
  );

const found = (time: TimeRef, rule: string): Dated => ({ edtf: time.time.edtf, spans: [time], rule });

/** Tells of no deed, fault or verdict of its own. */
const isQuiet = (told: Told, clause: Clause): boolean =>
  [told.deeds, told.verdicts, told.faults].every(
    (refs) => !refs.some((ref) => ref.from >= clause.from && ref.from < clause.to),
  );

const THAT_WAS = listed("datesThatWas");

/** "that was end of August", "two weeks ago now": said after the deed in a clause without a deed of its own. */
const afterwards = (
  event: Event,
  times: readonly TimeRef[],
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
): TimeRef | undefined => {
  const lastClause = event.deeds.at(-1)?.clause ?? 0;
  return times.find((time) => {
    const at = index[time.from] ?? 0;
    const clause = clauses[at];
    if (clause === undefined || at <= lastClause || at > lastClause + 3 || time.from >= event.to)
      return false;
    const first = scan.tokens[clause.from]?.norm ?? "";
    const words = scan.tokens.slice(clause.from, time.from).map((token) => token.norm);
    return (
      ((words.includes("that") || THAT_WAS.has(first)) &&
        words.some((word) => ["was", "thats", "were"].includes(word))) ||
      (clause.from === time.from && clause.to - time.to <= 1)
    );
  });
};

/** The date of a piece of work, or undefined when nothing in its own words gives one. */
export const dateOf = (
  event: Event,
  told: Told,
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
  today: Edtf,
): Dated | undefined => {
  const times = dateTimes(told, today).filter((time) => time.from >= event.from && time.from < event.to);
  const main = [...event.deeds].sort((a, b) => Number(a.sense === "prep") - Number(b.sense === "prep"));
  for (const deed of main) {
    const own = times.filter((time) => within(time, clauses[deed.clause]));
    const best = own.sort((a, b) => Math.abs(a.from - deed.at) - Math.abs(b.from - deed.at))[0];
    if (best !== undefined) return found(best, "in-the-deed");
  }
  const that = afterwards(event, times, scan, clauses, index);
  if (that !== undefined) return found(that, "that-was");
  const lastClause = event.deeds.at(-1)?.clause ?? 0;
  const nextClause = clauses[lastClause + 1];
  const trailing =
    nextClause &&
    times.find(
      (time) =>
        time.from >= nextClause.from &&
        time.to <= nextClause.to &&
        (time.from - nextClause.from <= 2 || isQuiet(told, nextClause)),
    );
  if (trailing !== undefined) return found(trailing, "just-after-the-deed");
  const firstClause = event.deeds[0]?.clause ?? 0;
  const before = [...times]
    .reverse()
    .find((time) => (index[time.from] ?? 0) < firstClause && firstClause - (index[time.from] ?? 0) <= 3);
  if (before !== undefined) return found(before, "before-the-deed");
  const lasting = told.times.find(
    (time) =>
      time.from >= event.from &&
      time.from < event.to &&
      (time.time.role === "lasting" || time.time.role === "since"),
  );
  if (lasting !== undefined) return found(lasting, "lasting");
  return undefined;
};
