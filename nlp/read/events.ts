import type { Action } from "../../shared/vocabulary.ts";
import type { VerdictEntry } from "../lexicon/lexicon.ts";
import type { MaterialRef } from "../lexicon/materials.ts";
import type { Hit } from "../lexicon/pattern.ts";
import type { Amount } from "./amounts.ts";
import type { Clause } from "./clauses.ts";
import { type Deed, settle } from "./deeds.ts";
import type { Scan, Stretch, TimeRef } from "./scan.ts";
import type { Topic } from "./topics.ts";

export type EventKind = "work" | "look" | "plan" | "undone";

/** One piece of work (or look, plan, work left undone) on one topic. */
export type Event = {
  readonly kind: EventKind;
  readonly topic: Topic;
  action: Action;
  readonly deeds: Deed[];
  /** From after the event before to before the event after. */
  from: number;
  to: number;
};

/** All that was said within the stretches of one topic. */
export type Told = {
  readonly topic: Topic;
  readonly deeds: readonly Deed[];
  readonly verdicts: readonly Hit<VerdictEntry>[];
  readonly faults: readonly Stretch[];
  readonly times: readonly TimeRef[];
  readonly amounts: readonly Amount[];
  readonly materials: readonly MaterialRef[];
};

export type Context = {
  readonly scan: Scan;
  readonly clauses: readonly Clause[];
  readonly index: Int32Array;
  readonly dead: Uint8Array;
};

const RANK: Record<Action, number> = {
  rebuild: 10,
  weld: 9,
  replace: 8,
  install: 7.5,
  patch: 7.2,
  reinforce: 7.1,
  seal: 6.5,
  rewire: 6.2,
  refasten: 6,
  lubricate: 5,
  flush: 5,
  clean: 4,
  charge: 4,
  adjust: 3.8,
  tighten: 3.5,
  reset: 3,
  remove: 2,
  repair: 1,
  test: 0.5,
  inspect: 0.4,
};
const APART = new Set([
  "reinforce+weld",
  "clean+lubricate",
  "flush+replace",
  "clean+flush",
  "flush+lubricate",
  "charge+replace",
  "replace+reset",
  "lubricate+replace",
  "lubricate+tighten",
  "charge+clean",
  "adjust+lubricate",
  "rebuild+replace",
  "charge+tighten",
  "adjust+replace",
  "flush+seal",
  "lubricate+seal",
]);

const apart = (a: Action, b: Action): boolean => APART.has([a, b].sort().join("+"));

const NEW = new Set(["new", "fresh", "replacement", "brand"]);
const BACK = new Set(["back", "together"]);
const EXTRA = new Set(["second", "another", "extra", "additional", "spare"]);

const wordsBetween = (scan: Scan, from: number, to: number): string[] =>
  scan.tokens.slice(Math.max(0, from), to).map((token) => token.norm);

const givenFor = (deed: Deed, next: Deed | undefined, told: Told, { scan, clauses }: Context) => {
  const end = Math.min(next?.from ?? Infinity, Math.max(clauses[deed.clause]?.to ?? deed.to, deed.to));
  const start = Math.min(deed.from, deed.at);
  const groups = told.materials
    .filter((ref) => ref.from >= start && ref.from < end && ref.to > deed.at)
    .flatMap((ref) => (ref.group === null ? [] : [ref.group]));
  const words = wordsBetween(scan, start - 2, end);
  return {
    groups,
    hasNew: words.some((word) => NEW.has(word)),
    extra: words.some((word) => EXTRA.has(word)) && !words.includes("coat"),
    back: words.slice(0, deed.to - start + 3).some((word) => BACK.has(word)),
    broken: told.faults.some((fault) => fault.from < deed.from),
    component: told.topic.component,
  };
};

const overlapsVerb = (deed: Deed, last: Deed | undefined): boolean =>
  (deed.sense === "new" || !deed.source.includes("~")) &&
  last !== undefined &&
  last.status === "done" &&
  last.clause === deed.clause &&
  last.sense !== "prep";

const failedBetween = (told: Told, from: number, to: number): boolean =>
  told.verdicts.some(
    (verdict) =>
      verdict.from >= from &&
      verdict.to <= to + 1 &&
      (verdict.value.outcome === "failed" || verdict.value.outcome === "partly"),
  );

const timesDiffer = (told: Told, last: Event, deed: Deed, { clauses }: Context): boolean => {
  const clause = clauses[deed.clause];
  const lastTimes = told.times.filter(
    (time) =>
      last.deeds.some(
        (each) =>
          time.from >= (clauses[each.clause]?.from ?? 0) && time.to <= (clauses[each.clause]?.to ?? 0),
      ) && time.time.role === "point",
  );
  const own = told.times.find(
    (time) =>
      clause !== undefined && time.from >= clause.from && time.to <= clause.to && time.time.role === "point",
  );
  return (
    own !== undefined && lastTimes.length > 0 && lastTimes.every((time) => time.time.edtf !== own.time.edtf)
  );
};

const KIND: Record<string, EventKind> = { plan: "plan", not: "undone" };
const kindOf = (deed: Deed): EventKind => KIND[deed.status] ?? (deed.sense === "look" ? "look" : "work");

const joins = (
  last: Event | undefined,
  kind: EventKind,
  action: Action,
  deed: Deed,
  told: Told,
  context: Context,
): boolean => {
  if (last === undefined || last.kind !== kind) return false;
  if (kind !== "work") return true;
  const lastTo = last.deeds.at(-1)?.to ?? last.from;
  if (failedBetween(told, lastTo, deed.from) || timesDiffer(told, last, deed, context)) return false;
  return !apart(last.action, action);
};

const start = (deed: Deed, pending: readonly Deed[], { clauses }: Context): number => {
  const first = pending[0] ?? deed;
  return clauses[first.clause]?.from ?? first.from;
};

/** Groups the deeds of one topic into pieces of work. */
export const eventsOf = (told: Told, context: Context): Event[] => {
  const events: Event[] = [];
  let pending: Deed[] = [];
  let lastDeed: Deed | undefined;
  const worked = told.deeds.some(
    (deed) => kindOf(deed) === "work" && deed.status === "done" && deed.sense !== "prep",
  );
  const deeds = told.deeds.filter((deed) => deed.status !== "talk" && deed.status !== "purpose");
  const open = (kind: EventKind, action: Action, deed: Deed) => {
    const from = start(deed, pending, context);
    const before = events.at(-1);
    if (before !== undefined) before.to = Math.max(before.from + 1, from);
    events.push({
      kind,
      topic: told.topic,
      action,
      deeds: [...pending, deed],
      from: before === undefined ? (told.topic.stretches[0]?.from ?? 0) : from,
      to: told.topic.stretches.at(-1)?.to ?? deed.to,
    });
    pending = [];
  };
  deeds.forEach((deed, index) => {
    if (overlapsVerb(deed, lastDeed)) return;
    const kind = kindOf(deed);
    if (kind === "look" && worked) return;
    if (deed.sense === "prep" && kind === "work") {
      pending.push(deed);
      return;
    }
    const action = settle(deed, givenFor(deed, deeds[index + 1], told, context));
    if (action === null) return;
    lastDeed = deed;
    const last = events.at(-1);
    if (last !== undefined && joins(last, kind, action, deed, told, context)) {
      last.deeds.push(...pending, deed);
      pending = [];
      if (RANK[action] > RANK[last.action]) last.action = action;
    } else open(kind, action, deed);
  });
  const left = pending[0];
  if (
    left !== undefined &&
    !events.some(
      (event) =>
        event.kind === "work" && event.deeds.some((deed) => Math.abs(deed.clause - left.clause) <= 2),
    )
  ) {
    pending = pending.slice(1);
    open("work", "remove", left);
  }
  return events;
};
