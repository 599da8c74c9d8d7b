import type { Moment, Reading } from "../../shared/reading.ts";
import { type Clause, clauseIndex, clausesOf } from "./clauses.ts";
import { corrected } from "./corrections.ts";
import { withCosts } from "./costs.ts";
import { saidDay } from "./dates.ts";
import { deedsOf } from "./deeds.ts";
import { eventsOf } from "./events.ts";
import { fragmentVerdicts } from "./fragments.ts";
import { tokensOf } from "./ground.ts";
import { withoutHopes } from "./hopes.ts";
import { withLostVerdicts } from "./lost-verdicts.ts";
import { draftOf, type Made } from "./made.ts";
import { mutedTokens } from "./muted.ts";
import { recordsOf } from "./records.ts";
import { type Scan, type Stretch, scan } from "./scan.ts";
import { shapedVerdicts } from "./shapes.ts";
import type { Like, Told } from "./told.ts";
import { type Topic, topicsOf } from "./topics.ts";
import { withDates } from "./undated.ts";
import { usageOf } from "./usage.ts";
import { Places } from "./where.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

/** "The smoke alarm and the gas alarm both tested": what is said of the second is said of the first. */
const withPartners = (made: readonly Made[], topics: readonly Topic[]): Made[] => {
  const silent = new Set(
    topics.filter(
      (topic) =>
        !made.some(
          (each) => each.told.topic === topic && !(each.kind === "check" && each.action === "inspect"),
        ),
    ),
  );
  const spoken = made.filter(
    (each) =>
      !(
        each.kind === "check" &&
        made.some(
          (other) =>
            other.told.topic.partner === each.told.topic &&
            other.kind === "check" &&
            silent.has(each.told.topic),
        )
      ),
  );
  return spoken.flatMap((each) => {
    const { partner } = each.told.topic;
    if (partner === null || !silent.has(partner)) return [each];
    return [{ ...each, told: { ...each.told, topic: partner }, cost: null }, each];
  });
};

const TURNS = listed("indexTurns");

/** Words of two sentences that only look like one phrase: "never hold | well it's been two years". */
const crossesTurn = (
  ref: Stretch,
  { tokens }: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
): boolean => {
  const last = index[ref.to - 1] ?? 0;
  return index[ref.from] !== last && TURNS.has(tokens[clauses[last]?.from ?? 0]?.norm ?? "");
};

/** A word inside a name is no fault: "smoke" in "smoke alarm". */
const outside = <T extends Stretch>(faults: readonly T[], names: readonly Stretch[]): T[] => {
  const named = tokensOf(names);
  return faults.filter((fault) => !(named.has(fault.from) && named.has(fault.to - 1)));
};

const uncovered = <T extends Stretch>(faults: readonly T[], covers: readonly Stretch[]): T[] => {
  const covered = tokensOf(covers);
  return faults.filter((fault) => !covered.has(fault.from) && !covered.has(fault.to - 1));
};

/**
 * Reads a note into the records that a careful listener would write down, and the use of the rig that it reports.
 * Deterministic; grows linearly with the text. Throws a RangeError when `moment` holds no instant or zone.
 */
export const read = (text: string, moment: Moment): Reading => {
  const first: Scan = scan(text, moment);
  if (first.tokens.length === 0) return { records: [], usage: [] };
  const today = saidDay(moment);
  const clauses = clausesOf(first);
  const index = clauseIndex(clauses);
  const deeds = deedsOf(first, clauses, index);
  const whole = first.verdicts.filter((verdict) => !crossesTurn(verdict, first, clauses, index));
  const told = withoutHopes(first, whole, clauses, index);
  const shaped = [
    ...fragmentVerdicts(first, clauses, deeds),
    ...shapedVerdicts(first, clauses, index, deeds),
  ];
  const verdicts = [...told, ...shaped].sort((a, b) => a.from - b.from);
  const seen: Scan = { ...first, verdicts };
  const fixed = corrected(seen, deeds);
  const muted = mutedTokens(seen, clauses);
  const live = <T extends Stretch>(refs: readonly T[]): T[] =>
    refs.filter((ref) => fixed.dead[ref.from] !== 1 && muted[ref.from] !== 1);
  const topics = topicsOf(seen, clauses, index, deeds, fixed, muted);
  const names = [...seen.components, ...seen.materials].filter((ref) => ref.to - ref.from > 1);
  const taken = [
    ...seen.amounts,
    ...seen.verdicts,
    ...seen.times,
    ...deeds
      .filter((deed) => deed.status === "done" || deed.status === "plan")
      .map((deed) => ({ from: deed.at, to: deed.at + 1 })),
  ];
  const faults = live(uncovered(outside(seen.faults, names), taken));
  const again = seen.tokens.flatMap((token, at) => (token.norm === "again" ? [at] : []));
  const alive = {
    deeds: live(deeds),
    verdicts: live(seen.verdicts),
    times: live(seen.times),
    amounts: live(fixed.amounts),
    materials: live(seen.materials),
  };
  const build = {
    scan: seen,
    clauses,
    index,
    dead: fixed.dead,
    places: new Places(seen, fixed.dead),
    today,
    muted,
    times: alive.times,
    deeds: alive.deeds,
  };
  let before: Like | null = null;
  const made = topics.flatMap((topic) => {
    const mine = <T extends Stretch>(refs: readonly T[]): T[] =>
      topic.stretches.flatMap((stretch) => [...startingIn(refs, stretch.from, stretch.to)]);
    const told: Told = {
      topic,
      deeds: mine(alive.deeds),
      verdicts: mine(alive.verdicts),
      faults: mine(faults),
      times: mine(alive.times),
      amounts: mine(alive.amounts),
      materials: mine(alive.materials),
      again,
    };
    const events = eventsOf(told, build, before);
    const work = events.findLast((event) => event.kind === "work");
    if (work !== undefined) before = { event: work, told };
    return recordsOf(told, events, build);
  });
  const dated = withDates(
    withLostVerdicts(
      withPartners(made, topics).sort((a, b) => a.span.from - b.span.from),
      live(seen.verdicts),
      seen,
      clauses,
      index,
    ),
    build,
  );
  const records = withCosts(dated, alive.amounts, build);
  const exposed = new Set(records.flatMap((each) => each.exposure.map((exposure) => exposure.at.from)));
  const skip = (at: number): boolean => exposed.has(at) || fixed.dead[at] === 1;
  const clauseOf = (at: number): Clause =>
    clauses[index[at] ?? 0] ?? { from: 0, to: seen.tokens.length, hard: true, subordinate: false };
  return {
    records: records.map((each) => draftOf(each, seen, clauses)),
    usage: usageOf(seen, fixed.amounts, clauseOf, skip, today),
  };
};
