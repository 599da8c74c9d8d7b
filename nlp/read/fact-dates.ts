import type { Build } from "./build.ts";
import type { Dated } from "./dates.ts";
import type { Made } from "./made.ts";
import { isPastPoint } from "./past-points.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const FINDING = listed("datesFinding");
const PRESENT = listed("datesPresent");

/**
 * "Found it on Thursday under the mat": when something was found or broke. What is told in the present tense,
 * or of earlier work ("the patch from May is lifting"), is found when it is told.
 */
export const factDate = ({ kind, span, told }: Made, build: Build): Dated | undefined => {
  const { clauses, index, scan } = build;
  for (const time of startingIn(told.times, span.from, span.to)) {
    if (!isPastPoint(time, build.today)) continue;
    const { from, to } = clauses[index[time.from] ?? 0] ?? { from: 0, to: 0 };
    const words = scan.tokens.slice(from, to).map((token) => token.norm);
    const worked = startingIn(build.deeds, from, to).some(
      (deed) => deed.status === "done" && deed.sense !== "look",
    );
    if (
      worked ||
      words.some((word) => PRESENT.has(word)) ||
      !(kind === "check" || words.some((word) => FINDING.has(word)))
    )
      continue;
    return { edtf: time.time.edtf, spans: [time], rule: "found-then" };
  }
  return undefined;
};
