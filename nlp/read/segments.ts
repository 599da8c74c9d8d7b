import type { Chosen } from "./chosen.ts";
import type { Stretch } from "./scan.ts";
import type { Setting } from "./setting.ts";
import { topicStart } from "./topics.ts";
import { startingIn, touching } from "./windows.ts";

const REACH = 3;

/** A clause that can only lead up to what follows: it passes no verdict and tells nothing that is written down. */
const leadsUp = (setting: Setting, index: number): boolean => {
  const clause = setting.clauses[index];
  return (
    clause !== undefined &&
    startingIn(setting.scan.verdicts, clause.from, clause.to).length === 0 &&
    startingIn(setting.scan.amounts, clause.from, clause.to).length === 0
  );
};

/** Whether a clause has work that leads to more, or only a time. */
const sayingAhead = (setting: Setting, index: number): boolean => {
  const clause = setting.clauses[index];
  if (clause === undefined) return false;
  return (
    startingIn(setting.scan.times, clause.from, clause.to).length > 0 ||
    touching(setting.deeds, clause.from, clause.to).some(
      (deed) => deed.clause === index && deed.status === "done",
    )
  );
};

const startOf = (setting: Setting, each: Chosen, before: Chosen | undefined): number => {
  const { telling, ref } = each;
  const floor = before === undefined ? 0 : before.telling.to;
  const own = setting.clauses[telling.clause]?.from ?? telling.from;
  const named = before === undefined || before.ref.from !== ref.from;
  if (named && ref.from >= floor && ref.from <= telling.at)
    return Math.max(floor, Math.min(own, topicStart(setting, ref)));
  const first = before === undefined ? -1 : before.telling.clause;
  let index = telling.clause;
  let start = own;
  for (
    let back = telling.clause - 1;
    back > first && telling.clause - back <= REACH && leadsUp(setting, back);
    back--
  )
    if (sayingAhead(setting, back)) index = back;
  if (index !== telling.clause) start = setting.clauses[index]?.from ?? own;
  return Math.max(floor, Math.min(start, telling.from));
};

/** The stretch of the note that is about each record, in order and without gaps after the first. */
export const segmentsOf = (setting: Setting, chosen: readonly Chosen[]): Stretch[] => {
  const starts: number[] = [];
  let before: Chosen | undefined;
  for (const [at, each] of chosen.entries()) {
    const last = chosen[at - 1];
    if (last !== undefined && last.telling !== each.telling) before = last;
    starts.push(startOf(setting, each, before));
  }
  const segments: Stretch[] = [];
  let to = setting.scan.tokens.length;
  for (let at = chosen.length - 1; at >= 0; at--) {
    const from = starts[at] ?? 0;
    if (chosen[at + 1]?.telling !== chosen[at]?.telling && at + 1 < chosen.length) to = starts[at + 1] ?? to;
    segments.push({ from, to: Math.max(to, from + 1) });
  }
  return segments.reverse();
};
