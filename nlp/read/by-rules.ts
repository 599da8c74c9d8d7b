import type { Build } from "./build.ts";
import { eventsOf } from "./events.ts";
import type { Ground } from "./ground.ts";
import { verdictsOn } from "./heat.ts";
import type { Said } from "./holds.ts";
import type { Made } from "./made.ts";
import { recordsOf } from "./records.ts";
import type { Stretch } from "./scan.ts";
import type { Like, Told } from "./told.ts";
import { type Topic, topicsOf } from "./topics.ts";
import { startingIn } from "./windows.ts";

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

/** What the rules alone make of a note: its topics, and the records that they would write down. */
export type Ruled = { readonly topics: readonly Topic[]; readonly records: readonly Made[] };

export const byRules = (
  { scan, clauses, index, deeds, fixed, muted }: Ground,
  said: Said,
  build: Build,
): Ruled => {
  const topics = topicsOf(scan, clauses, index, deeds, fixed, muted);
  let before: Like | null = null;
  const made = topics.flatMap((topic) => {
    const mine = <T extends Stretch>(refs: readonly T[]): T[] =>
      topic.stretches.flatMap((stretch) => [...startingIn(refs, stretch.from, stretch.to)]);
    const told: Told = {
      topic,
      deeds: mine(said.deeds),
      verdicts: verdictsOn(topic.component, mine(said.verdicts), scan),
      faults: mine(said.faults),
      times: mine(said.times),
      amounts: mine(said.amounts),
      materials: mine(said.materials),
      again: said.again,
    };
    const events = eventsOf(told, build, before);
    const work = events.findLast((event) => event.kind === "work");
    if (work !== undefined) before = { event: work, told };
    return recordsOf(told, events, build);
  });
  return { topics, records: withPartners(made, topics) };
};
