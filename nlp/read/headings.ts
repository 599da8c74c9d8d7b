import type { Build } from "./build.ts";
import type { Dated } from "./dates.ts";
import type { Made } from "./made.ts";
import { isPastPoint } from "./past-points.ts";
import type { TimeRef } from "./scan.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const MARKS = new Set([":", "-", "–", "—"]);
const SCENE = listed("datesScene");
const SPENT = listed("datesSpent");
const LEAD = 5;

/** "Sat: greased the hubs. New anode." and "spent Saturday on the trailer": a time over all that follows. */
const isHeading = (time: TimeRef, { scan, clauses, index, deeds }: Build): boolean => {
  const { from, to } = clauses[index[time.from] ?? 0] ?? { from: 0, to: 0 };
  const before = scan.tokens[time.from - 1];
  const opens =
    time.from === 0 || before?.kind === "mark" || clauses[index[time.from] ?? 0]?.from === time.from;
  const after = scan.tokens[time.to];
  if (after?.kind === "mark" && (after.norm === ":" || (opens && MARKS.has(after.norm)))) return true;
  const words = scan.tokens.slice(from, to).map((token) => token.norm);
  const named = startingIn(scan.components, from, to).some((ref) => !ref.weak);
  const worked = startingIn(deeds, from, to).some(
    (deed) => deed.status === "done" && deed.sense !== "generic",
  );
  const lead = scan.tokens.slice(Math.max(from, time.from - LEAD), time.from);
  return (
    !worked &&
    (lead.some((token) => SPENT.has(token.norm)) || (!named && words.some((word) => SCENE.has(word))))
  );
};

const headings = new WeakMap<Build, readonly TimeRef[]>();

const headingsOf = (build: Build): readonly TimeRef[] => {
  const known = headings.get(build);
  if (known !== undefined) return known;
  const found = build.times.filter((time) => isPastPoint(time, build.today) && isHeading(time, build));
  headings.set(build, found);
  return found;
};

/** The date of the heading that a piece of work stands under. */
export const headingOver = (each: Made, build: Build): Dated | undefined => {
  const at = each.event?.deeds[0]?.at ?? each.span.to;
  const over = headingsOf(build).findLast((time) => time.from < at);
  if (over === undefined) return undefined;
  return { edtf: over.time.edtf, spans: [over], rule: "under-a-heading" };
};
