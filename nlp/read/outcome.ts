import type { Outcome } from "../../shared/vocabulary.ts";
import type { VerdictEntry } from "../lexicon/lexicon.ts";
import type { Hit } from "../lexicon/pattern.ts";
import type { Stretch } from "./scan.ts";

export type Judged = { readonly outcome: Outcome; readonly spans: readonly Stretch[]; readonly rule: string };

type Verdict = Hit<VerdictEntry>;

const last = <T>(list: readonly T[]): T | undefined => list.at(-1);

/** Words of a verdict that no praise after it takes back: "slow but", "only if you lift it"; "a bit better" is less. */
const QUALIFIES =
  /\b(?:but|meh|half|if|except|only|still|not|mostly?|less|nearly|almost|till|until|unless|one)\b/;

/** The outcome that the verdicts on one piece of work add up to, in the order in which they were said. */
export const judge = (
  verdicts: readonly Verdict[],
  faultsAfter: readonly Stretch[],
  spoils: readonly Stretch[],
): Judged => {
  const of = (outcome: Outcome) => verdicts.filter((verdict) => verdict.value.outcome === outcome);
  const [good, part, bad, open] = [of("holding"), of("partly"), of("failed"), of("untested")];
  const lastBad = last(bad);
  const lastGood = last(good);
  const lastPart = last(part);
  const overBad =
    lastPart !== undefined &&
    lastBad !== undefined &&
    (lastPart.from > lastBad.from || lastBad.source.startsWith("still"));
  if (lastBad !== undefined && !overBad && (lastGood === undefined || lastBad.from > lastGood.from))
    return { outcome: "failed", spans: [lastBad], rule: `verdict:${lastBad.source}` };
  const overPart = lastPart !== undefined && lastGood !== undefined && lastGood.from >= lastPart.to;
  if (lastPart !== undefined && !(overPart && !QUALIFIES.test(lastPart.source)))
    return { outcome: "partly", spans: [lastPart], rule: `verdict:${lastPart.source}` };
  const openAfter = last(open);
  if (openAfter !== undefined && (lastGood === undefined || openAfter.from > lastGood.from))
    return { outcome: "untested", spans: [openAfter], rule: `verdict:${openAfter.source}` };
  if (lastGood !== undefined) {
    const spoiled = spoils.find((fault) => fault.from > lastGood.to);
    return spoiled === undefined
      ? { outcome: "holding", spans: [lastGood], rule: `verdict:${lastGood.source}` }
      : { outcome: "partly", spans: [lastGood, spoiled], rule: "good-then-fault" };
  }
  const after = last(faultsAfter);
  return after === undefined
    ? { outcome: "untested", spans: [], rule: "nothing-said" }
    : { outcome: "failed", spans: [after], rule: "fault-after" };
};
