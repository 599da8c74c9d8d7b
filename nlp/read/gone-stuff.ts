import type { Build } from "./build.ts";
import { clauseAt, wordAt } from "./ground.ts";
import type { MaterialChoice } from "./material-signs.ts";
import type { Scan, Stretch } from "./scan.ts";
import { startingIn } from "./windows.ts";

/** As far behind stuff, in words, as it is told to have let go. */
const REACH = 12;

/** Words before stuff that goes in now, whatever is told of it. */
const GOES_IN: ReadonlySet<string> = new Set(
  "with w using used use fresh new more another some same bit of".split(" "),
);

/** Where, behind stuff, it is first told to have let go, or that there was trouble. */
const letGoAt = (scan: Scan, { to }: Stretch): number | undefined => {
  const failed = startingIn(scan.verdicts, to, to + REACH).filter(({ value }) => value.outcome === "failed");
  const troubles = startingIn(scan.faults, to, to + REACH);
  return [...failed, ...troubles].map(({ from }) => from).toSorted((a, b) => a - b)[0];
};

/**
 * "Butyl on the trim dried out and leaked, so I resealed it with polyurethane": stuff that stands before all work of its
 * clause, let go, and has other stuff put in its place by work told after that.
 */
const isGone = (choice: MaterialChoice, taken: readonly MaterialChoice[], build: Build): boolean => {
  const { scan, clauses, index, deeds } = build;
  const letGo = letGoAt(scan, choice);
  if (letGo === undefined || GOES_IN.has(wordAt(scan, choice.from - 1))) return false;
  const { from } = clauseAt({ clauses, index }, choice.from);
  const done = deeds.filter(({ status, at }) => status === "done" && at >= 0);
  if (done.some(({ at }) => at >= from && at < choice.from)) return false;
  const after = done.find(({ at, sense }) => at > letGo && sense !== "prep");
  const others = taken.filter((other) => other !== choice);
  return (
    after !== undefined &&
    !done.some(({ at }) => at > choice.to && at < letGo) &&
    others.every((other) => other.from > after.at && other.name !== choice.name)
  );
};

/** What went in, without what is told to have let go before. */
export const withoutGone = (taken: readonly MaterialChoice[], build: Build): readonly MaterialChoice[] =>
  taken.length < 2 ? taken : taken.filter((choice) => !isGone(choice, taken, build));
