import type { Made } from "./made.ts";
import type { Judged } from "./outcome.ts";
import { listed } from "./words.ts";

/** Small fixes that a later, larger one of the same trouble replaces because they did not do. */
const SMALL = listed("recordsSmall");
const LARGER: ReadonlySet<string> = new Set(["replace", "rebuild", "weld", "rewire", "reinforce"]);

const laterFix = (first: Made, second: Made): boolean =>
  first.dated !== undefined &&
  second.dated !== undefined &&
  first.dated.edtf !== second.dated.edtf &&
  SMALL.has(first.action ?? "") &&
  (LARGER.has(second.action ?? "") || first.action === second.action);

const REDONE: Judged = { outcome: "failed", spans: [], rule: "done-again-later" };
const SILENT = new Set(["nothing-said"]);
const isHeld = (rule: string): boolean => /^verdict:(?:it\|that|held|hold~ for)/.test(rule);

/** What two pieces of work told in one breath share, and what a second one says of the first. */
const between = (first: Made, second: Made): Made => {
  const rule = first.judged?.rule ?? "";
  if (laterFix(first, second) && (SILENT.has(rule) || isHeld(rule))) return { ...first, judged: REDONE };
  const silent = SILENT.has(rule) && second.judged !== null && second.judged.outcome !== "failed";
  const sameTime =
    second.dated === undefined || first.dated === undefined || first.dated.edtf === second.dated.edtf;
  if (!silent || !sameTime) return first;
  return {
    ...first,
    judged: second.judged,
    exposure: first.exposure.length > 0 ? first.exposure : second.exposure,
  };
};

/** Pieces of work on one thing, with what they share and what the later says of the earlier. */
export const shared = (made: readonly Made[]): Made[] => {
  const out = [...made];
  for (let at = out.length - 2; at >= 0; at--) {
    const [first, second] = [out[at], out[at + 1]];
    if (first?.kind === "repair" && second !== undefined) out[at] = between(first, second);
  }
  for (let at = 1; at < out.length; at++) {
    const [first, second] = [out[at - 1], out[at]];
    if (
      first?.dated !== undefined &&
      second !== undefined &&
      second.dated === undefined &&
      first.judged?.outcome !== "failed"
    )
      out[at] = { ...second, dated: { ...first.dated, rule: "same-time" } };
  }
  return out;
};
