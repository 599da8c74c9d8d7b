import type { Build } from "./build.ts";
import { wordAt } from "./ground.ts";
import type { Made } from "./made.ts";
import type { Stretch } from "./scan.ts";
import { startingIn } from "./windows.ts";

/** Words right behind a deed, names and times among them. */
const RIGHT_BEHIND = 12;
const MOST_CLAUSES = 4;

/** What each of the clauses that start behind a deed tells, in order. */
const clauseSigns = ({ scan, clauses, deeds }: Build, { from, to }: Stretch, ruled: string): string[] =>
  startingIn(clauses, from, to)
    .slice(0, MOST_CLAUSES)
    .flatMap((clause, nth) => {
      const verdict = startingIn(scan.verdicts, clause.from, clause.to)[0]?.value.outcome ?? "none";
      const fault = startingIn(scan.faults, clause.from, clause.to).length > 0 ? "fault" : "none";
      const deed = startingIn(deeds, clause.from, clause.to)[0]?.status ?? "none";
      const told = `${verdict} ${fault} ${deed}`;
      return [`clause ${String(nth)}=${told}`, `clause=${told} ruled=${ruled}`];
    });

/** The signs, as names, of what is told behind a deed, up to the end of its record, and of the record after it. */
export const aftermathSigns = (
  made: Made,
  next: Made | undefined,
  behind: Stretch,
  redone: string,
  build: Build,
): string[] => {
  const { scan, times } = build;
  const rule = made.judged?.rule.split(/[: ]/)[0] ?? "none";
  const words = new Set<string>();
  for (let at = behind.from; at < behind.from + RIGHT_BEHIND; at++) words.add(wordAt(scan, at));
  const time = startingIn(times, behind.from, behind.to).at(-1)?.time;
  const amounts = startingIn(scan.amounts, behind.from, behind.to).map((amount) => amount.what);
  const after = `next=${next?.kind ?? "none"} ${next?.action ?? "none"}`;
  return [
    ...[...words].map((word) => `behind=${word}`),
    ...clauseSigns(build, behind, made.judged?.outcome ?? "untested"),
    `time=${time?.role ?? "none"} ${time?.direction ?? "none"} rule=${rule}`,
    `amounts=${amounts.slice(0, 2).join("+")} rule=${rule}`,
    after,
    `${after} redone=${redone}`,
    `next outcome=${next?.judged?.outcome ?? "none"} redone=${redone}`,
    `last=${String(next === undefined)} rule=${rule}`,
  ];
};
