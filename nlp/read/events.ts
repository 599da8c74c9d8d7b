import type { Action } from "../../shared/vocabulary.ts";
import type { Clause } from "./clauses.ts";
import { type Deed, isPurchase } from "./deed.ts";
import { givenFor } from "./given.ts";
import ranks from "./ranks.json" with { type: "json" };
import type { TimeRef } from "./scan.ts";
import { settle } from "./settle.ts";
import type { Context, Event, EventKind, Like, Told } from "./told.ts";
import { startingIn } from "./windows.ts";
import { listed, PEOPLE } from "./words.ts";

/** Of two actions in one piece of work the higher names it; these pairs are two pieces of work. */
const APART: ReadonlySet<string> = new Set(ranks.apart);
const RANK: Readonly<Record<Action, number>> = ranks.ranks;
const apart = (a: Action, b: Action): boolean => APART.has([a, b].sort().join("+"));

const KINDS: Readonly<Record<string, EventKind>> = { plan: "plan", not: "undone" };
const kindOf = (deed: Deed): EventKind => KINDS[deed.status] ?? (deed.sense === "look" ? "look" : "work");

const failedBetween = (told: Told, from: number, to: number): boolean =>
  told.faults.some(
    (fault) =>
      fault.value === 2 &&
      fault.from >= from &&
      fault.to <= to &&
      told.verdicts.every((verdict) => verdict.from < from || verdict.to > fault.from) &&
      told.again.some((at) => Math.abs(at - fault.to) <= 2),
  ) ||
  told.verdicts.some(
    ({ from: start, to: end, value }) =>
      start >= from && end <= to + 2 && (value.outcome === "failed" || value.outcome === "partly"),
  );

/** The points in time said in the clause of a deed. */
const pointsOf = (told: Told, clauses: readonly Clause[], deed: Deed): TimeRef[] => {
  const { from, to } = clauses[deed.clause] ?? { from: 0, to: 0 };
  return told.times.filter((time) => time.time.role === "point" && time.from >= from && time.to <= to);
};

/** The dates of an event's deeds, gathered as the deeds come, so that a long event is not gone over again and again. */
type Dates = { readonly edtfs: Set<string>; deeds: number };
const gathered = new WeakMap<Event, Dates>();

const datesOf = (told: Told, clauses: readonly Clause[], event: Event): ReadonlySet<string> => {
  const dates = gathered.get(event) ?? { edtfs: new Set<string>(), deeds: 0 };
  for (const deed of event.deeds.slice(dates.deeds).filter((each) => !isPurchase(each)))
    for (const { time } of pointsOf(told, clauses, deed)) dates.edtfs.add(time.edtf);
  dates.deeds = event.deeds.length;
  gathered.set(event, dates);
  return dates.edtfs;
};

/** "…, and this past August | I pulled it": a time told between two deeds, in a clause that tells of no other. */
const between = (told: Told, last: Event, deed: Deed, clauses: readonly Clause[]): TimeRef | undefined => {
  const from = clauses[(last.deeds.at(-1)?.clause ?? deed.clause) + 1]?.from ?? deed.from;
  const to = clauses[deed.clause]?.from ?? deed.from;
  return startingIn(told.times, from, to).findLast(
    ({ time }) => time.role === "point" && time.direction !== "future",
  );
};

const timesDiffer = (told: Told, last: Event, deed: Deed, clauses: readonly Clause[]): boolean => {
  const own = pointsOf(told, clauses, deed)[0] ?? between(told, last, deed, clauses);
  if (own === undefined) return false;
  const before = datesOf(told, clauses, last);
  return before.size > 0 && !before.has(own.time.edtf);
};

const joins = (
  last: Event | undefined,
  kind: EventKind,
  action: Action,
  deeds: readonly Deed[],
  told: Told,
  { clauses }: Context,
): boolean => {
  if (last === undefined || last.kind !== kind) return false;
  if (kind !== "work") return true;
  const lastTo = last.deeds.at(-1)?.to ?? last.from;
  if (deeds.some((deed) => failedBetween(told, lastTo, deed.from) || timesDiffer(told, last, deed, clauses)))
    return false;
  const packs = told.topic.component === "wheel-bearing" && [last.action, action].includes("clean");
  return packs || !apart(last.action, action);
};

/** "New" only says what the verb before it in its clause put in. */
const CARRIES_PARTS = listed("eventsCarriesParts");
const isObject = (deed: Deed, before: Deed | undefined): boolean =>
  (deed.sense === "new" &&
    before?.status === "done" &&
    deed.status === "done" &&
    deed.clause - before.clause === 1 &&
    CARRIES_PARTS.has(before.action ?? "") &&
    before.sense === "deed" &&
    deed.at - before.to < 12) ||
  ((deed.sense === "new" || (deed.sense === "apply" && !deed.source.includes("~"))) &&
    before !== undefined &&
    before.status === deed.status &&
    before.clause === deed.clause &&
    before.sense !== "prep");

const withoutObjects = (deeds: readonly Deed[]): Deed[] => {
  const kept: Deed[] = [];
  for (const deed of deeds) if (!isObject(deed, kept.at(-1))) kept.push(deed);
  return kept;
};

const WOODEN = new Set(["timber", "sheet"]);
const CUTS = /^(?:cut|rip|tear|dig|chisel|gut)~/;

const actionOf = (
  deed: Deed,
  next: Deed | undefined,
  pending: readonly Deed[],
  told: Told,
  { scan, clauses }: Context,
): Action | null => {
  const given = givenFor(deed, next, told, scan, clauses);
  const cutOut =
    pending.some((each) => CUTS.test(each.source)) && given.groups.some((group) => WOODEN.has(group));
  return cutOut && (deed.sense === "fit" || deed.sense === "fasten") ? "rebuild" : settle(deed, given);
};

const SAME_AGAIN = new Set(["too", "also", "same", "likewise", "other", "again"]);
const repeats = (deed: Deed, { scan, clauses }: Context): boolean =>
  deed.sense === "generic" &&
  scan.tokens.slice(deed.at, clauses[deed.clause]?.to ?? deed.to).some((token) => SAME_AGAIN.has(token.norm));

class Events {
  readonly list: Event[] = [];
  #pending: Deed[] = [];
  readonly #before: Like | null;
  readonly #told: Told;
  readonly #context: Context;

  constructor(told: Told, context: Context, before: Like | null) {
    this.#before = before;
    this.#told = told;
    this.#context = context;
  }

  add(deed: Deed, next: Deed | undefined): void {
    const kind = kindOf(deed);
    if (
      deed.sense === "prep" &&
      (kind === "work" || (next !== undefined && kindOf(next) === kind && next.clause - deed.clause <= 2))
    ) {
      this.#pending.push(deed);
      return;
    }
    const last = this.list.at(-1);
    const lastWork = this.list.findLast((event) => event.kind === "work");
    const like = lastWork === undefined ? this.#before : { event: lastWork, told: this.#told };
    if (like !== null && repeats(deed, this.#context)) {
      this.#open(kind, like.event.action, deed, like);
      return;
    }
    const action = actionOf(deed, next, this.#pending, this.#told, this.#context);
    if (action === null) return;
    if (
      last === undefined ||
      !joins(last, kind, action, [...this.#pending, deed], this.#told, this.#context)
    ) {
      this.#open(kind, action, deed, null);
      return;
    }
    last.deeds.push(...this.#pending, deed);
    this.#pending = [];
    if (RANK[action] > RANK[last.action]) last.action = action;
  }

  #open(kind: EventKind, action: Action, deed: Deed, like: Like | null): void {
    const deeds = [...this.#pending, deed];
    this.#pending = [];
    const first = deeds[0] ?? deed;
    const from = this.#reachBack(first);
    const before = this.list.at(-1);
    if (before !== undefined) before.to = Math.max(before.from + 1, from);
    const { stretches } = this.#told.topic;
    this.list.push({
      kind,
      action,
      deeds,
      like,
      from: before === undefined ? (stretches[0]?.from ?? 0) : from,
      to: stretches.at(-1)?.to ?? deed.to,
    });
  }

  /** Clauses before the deed that only set the scene ("so in march of last year I did it myself") are part of it. */
  #reachBack(first: Deed): number {
    const { clauses } = this.#context;
    const lastClause = this.list.at(-1)?.deeds.at(-1)?.clause ?? -1;
    const said = [...this.#told.verdicts, ...this.#told.faults];
    let at = first.clause;
    while (at - 1 > lastClause && first.clause - at < 2) {
      const clause = clauses[at - 1];
      if (clause === undefined || said.some((each) => each.from >= clause.from && each.from < clause.to))
        break;
      if (!this.#told.times.some((time) => time.from >= clause.from && time.to <= clause.to)) break;
      at--;
    }
    return first.clause === lastClause ? first.from : (clauses[at]?.from ?? first.from);
  }

  /** Taking off is a piece of work of its own when nothing else came of it. */
  close(): Event[] {
    const left = this.#pending[0];
    this.#pending = this.#pending.slice(1);
    const near = (event: Event) =>
      event.kind === "work" &&
      left !== undefined &&
      event.deeds.some((deed) => Math.abs(deed.clause - left.clause) <= 2);
    if (left !== undefined && !this.list.some(near)) this.#open("work", "remove", left, null);
    return this.list;
  }
}

/** Most words of a verdict, gaps and all. */
const LONGEST_VERDICT = 30;

/** "It hasn't moved", "that popped out again" say how it went and not what was done or left undone. */
const onlyJudged = (deed: Deed, { verdicts }: Told, { scan }: Context): boolean =>
  startingIn(verdicts, deed.at - LONGEST_VERDICT, deed.at + 1).some(
    (each) =>
      deed.at < each.to &&
      (deed.status === "not" ||
        (each.value.outcome === "failed" && !PEOPLE.has(scan.tokens[deed.at - 1]?.norm ?? ""))),
  );

/** Groups the deeds of one topic into pieces of work; `before` is the last one on another topic ("did the same on the other"). */
export const eventsOf = (told: Told, context: Context, before: Like | null): Event[] => {
  const told2 = withoutObjects(
    told.deeds.filter(
      (deed) => deed.status !== "talk" && deed.status !== "purpose" && !onlyJudged(deed, told, context),
    ),
  );
  const worked = told2.some((deed) => kindOf(deed) === "work" && deed.sense !== "prep");
  const deeds = told2.filter((deed) => !(worked && kindOf(deed) === "look"));
  const events = new Events(told, context, before);
  for (const [at, deed] of deeds.entries()) events.add(deed, deeds[at + 1]);
  return events.close();
};
