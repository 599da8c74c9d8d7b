import type { Draft, Evidence, Span } from "../../shared/reading.ts";
import type { Edtf, Field, RecordFields } from "../../shared/record.ts";
import type { Action, Kind, Outcome } from "../../shared/vocabulary.ts";
import type { Clause } from "./clauses.ts";
import { type Dated, dateOf } from "./dates.ts";
import { type Exposed, exposuresOf } from "./exposures.ts";
import { dueOf } from "./due.ts";
import type { Context, Event, Told } from "./events.ts";
import { type Judged, judge } from "./outcome.ts";
import type { Scan, Stretch } from "./scan.ts";
import { materialsOf, type Used } from "./uses.ts";
import { type Places, wordsOf } from "./where.ts";

/** A record in the making, with what the later steps still need. */
export type Made = {
  readonly kind: Kind;
  readonly told: Told;
  readonly event: Event | null;
  readonly action: Action | null;
  readonly at: number;
  readonly dated: Dated | undefined;
  readonly judged: Judged | null;
  readonly used: Used;
  readonly where: Stretch | undefined;
  readonly exposure: readonly Exposed[];
  readonly cost: { readonly value: number; readonly at: Stretch } | null;
  readonly fault: Stretch | null;
  readonly due: { readonly text: string; readonly at: Stretch } | null;
  readonly span: Stretch;
};

type Build = Context & { readonly places: Places; readonly today: Edtf };

const NO_USE: Used = { names: [], refs: [], brands: [] };
const between = (from: number, to: number) => (ref: Stretch) => ref.from >= from && ref.from < to;

const faultStretch = (
  told: Told,
  clauses: readonly Clause[],
  index: Int32Array,
  from: number,
  to: number,
): Stretch | null => {
  const fault = told.faults.find(between(from, to));
  if (fault === undefined) return null;
  const clause = clauses[index[fault.from] ?? 0];
  return clause === undefined
    ? fault
    : { from: Math.max(clause.from, fault.from - 4), to: Math.min(clause.to, fault.to + 3) };
};

const costOf = (told: Told, event: Event): Made["cost"] => {
  const money = told.amounts.find(
    (amount) => amount.what === "money" && amount.from >= event.from && amount.from < event.to,
  );
  return money === undefined ? null : { value: money.value, at: money };
};

const whereOf = (told: Told, event: Stretch, places: Places): Stretch | undefined => {
  const mention = told.topic.mentions
    .map((ref) => places.ofMention(ref))
    .find((found) => found !== undefined);
  return mention ?? places.within(event, told.topic.mentions);
};

const judged = (told: Told, event: Event, isLast: boolean, early: readonly Stretch[]): Judged => {
  const after = Math.min(
    ...event.deeds.filter((deed) => deed.sense !== "prep").map((deed) => deed.at),
    Infinity,
  );
  const lastDeed = Math.max(...event.deeds.map((deed) => deed.at));
  const verdicts = told.verdicts.filter((verdict) => verdict.from > after && verdict.from < event.to);
  const faults = told.faults.filter((fault) => fault.from > lastDeed && fault.from < event.to);
  const result = judge(verdicts, faults, []);
  if (result.outcome !== "untested" || result.spans.length > 0 || !isLast || early.length === 0)
    return result;
  const first = told.verdicts.filter((verdict) => early.some((each) => each.from === verdict.from));
  return judge(first, [], []);
};

const earlyVerdicts = (told: Told, events: readonly Event[]): Stretch[] => {
  const first = events[0]?.deeds[0];
  return first === undefined
    ? []
    : told.verdicts.filter((verdict) => verdict.from < first.from && verdict.value.outcome !== "failed");
};

const ofWork = (told: Told, event: Event, isLast: boolean, early: readonly Stretch[], build: Build): Made => {
  const dated = dateOf(event, told, build.scan, build.clauses, build.index, build.today);
  const kind: Kind = event.kind === "look" ? "check" : "repair";
  return {
    kind,
    told,
    event,
    action: event.action,
    at: event.from,
    dated,
    judged: judged(told, event, isLast, early),
    used: kind === "repair" ? materialsOf(event, told, build.scan) : NO_USE,
    where: whereOf(told, event, build.places),
    exposure: kind === "repair" ? exposuresOf(told, event, build.scan) : [],
    cost: costOf(told, event),
    fault: faultStretch(told, build.clauses, build.index, event.from, event.to),
    due: null,
    span: { from: event.from, to: event.to },
  };
};

const ofPlan = (told: Told, event: Event, whole: Stretch, build: Build): Made => ({
  kind: "todo",
  told,
  event,
  action: event.action,
  at: event.from,
  dated: undefined,
  judged: null,
  used: materialsOf(event, told, build.scan),
  where: whereOf(told, event, build.places),
  exposure: [],
  cost: costOf(told, event),
  fault: faultStretch(told, build.clauses, build.index, whole.from, whole.to),
  due: dueOf(event, told, build.scan, build.clauses, build.index),
  span: { from: event.from, to: event.to },
});

const withoutDeed = (told: Told, build: Build): Made | undefined => {
  const from = told.topic.stretches[0]?.from ?? 0;
  const to = told.topic.stretches.at(-1)?.to ?? from;
  const base = {
    told,
    event: null,
    at: from,
    used: NO_USE,
    where: whereOf(told, { from, to }, build.places),
    exposure: [],
    cost: null,
    due: null,
    span: { from, to },
  };
  const fault = faultStretch(told, build.clauses, build.index, from, to);
  if (fault !== null) return { ...base, kind: "fault", action: null, dated: undefined, judged: null, fault };
  const verdict = told.verdicts.at(-1);
  if (verdict === undefined || verdict.value.outcome === "untested") return undefined;
  return {
    ...base,
    kind: "check",
    action: "inspect",
    dated: undefined,
    judged: judge(told.verdicts, [], []),
    fault: null,
  };
};

/** The records of one topic. */
export const recordsOf = (told: Told, events: readonly Event[], build: Build): Made[] => {
  const works = events.filter((event) => event.kind === "work");
  const looks = events.filter((event) => event.kind === "look");
  const plans = events.filter((event) => event.kind === "plan");
  const whole = { from: told.topic.stretches[0]?.from ?? 0, to: told.topic.stretches.at(-1)?.to ?? 0 };
  const early = earlyVerdicts(told, works);
  if (works.length > 0) {
    const lastWork = works.at(-1);
    const later = plans.filter(
      (plan) => plan.from >= (lastWork?.from ?? 0) && plan.action !== "test" && plan.action !== "inspect",
    );
    return [
      ...works.map((event, at) => ofWork(told, event, at === works.length - 1, early, build)),
      ...later.slice(0, 1).map((event) => ofPlan(told, event, event, build)),
    ];
  }
  const plan = plans[0];
  if (plan !== undefined) return [ofPlan(told, plan, whole, build)];
  const look = looks[0];
  if (look !== undefined) {
    const check = ofWork(told, { ...look, from: whole.from, to: whole.to }, true, told.verdicts, build);
    if (check.judged?.outcome === "holding" || check.fault === null)
      return check.judged?.outcome === "untested" && check.fault === null
        ? [{ ...check, judged: { outcome: "holding", spans: [], rule: "looked-and-said-no-more" } }]
        : [check];
    return [{ ...check, kind: "fault", action: null, judged: null }];
  }
  const rest = withoutDeed(told, build);
  return rest === undefined ? [] : [rest];
};

const spanOf = (scan: Scan, { from, to }: Stretch): Span => ({
  start: scan.tokens[from]?.start ?? 0,
  end: scan.tokens[Math.max(from, to - 1)]?.end ?? 0,
});

const evidenceOf = (made: Made, scan: Scan): Partial<Record<Field, Evidence>> => {
  const of = (spans: readonly Stretch[], rule: string): Evidence => ({
    spans: spans.map((each) => spanOf(scan, each)),
    sure: 0.8,
    rule,
  });
  const out: Partial<Record<Field, Evidence>> = {
    kind: of([made.span], `kind:${made.kind}`),
    component: of(made.told.topic.mentions, "named"),
  };
  if (made.event !== null)
    out.action = of(
      made.event.deeds,
      made.event.deeds.map((deed) => `${deed.sense}:${deed.source}`).join(", "),
    );
  if (made.judged !== null) out.outcome = of(made.judged.spans, made.judged.rule);
  if (made.dated !== undefined) out.date = of(made.dated.spans, made.dated.rule);
  if (made.used.refs.length > 0) out.materials = of(made.used.refs, "put-in-or-on");
  if (made.where !== undefined) out.where = of([made.where], "place");
  if (made.cost !== null) out.cost = of([made.cost.at], "money");
  if (made.exposure.length > 0)
    out.exposure = of(
      made.exposure.map((each) => each.at),
      "use-since",
    );
  if (made.fault !== null) out.fault = of([made.fault], "fault-words");
  if (made.due !== null) out.due = of([made.due.at], "due");
  return out;
};

const dateFor = (made: Made): Edtf | null => (made.kind === "todo" ? null : (made.dated?.edtf ?? null));
const outcomeFor = (made: Made): Outcome | null =>
  made.kind === "repair" || made.kind === "check" ? (made.judged?.outcome ?? "untested") : null;

export const draftOf = (made: Made, scan: Scan): Draft => {
  const fields: RecordFields = {
    kind: made.kind,
    component: made.told.topic.component,
    where: made.where === undefined ? null : wordsOf(scan, made.where).toLowerCase(),
    action: made.action,
    materials: [...made.used.names],
    date: dateFor(made),
    outcome: outcomeFor(made),
    exposure: made.exposure.map((each) => each.value),
    cost: made.cost?.value ?? null,
    fault: made.fault === null ? null : wordsOf(scan, made.fault),
    due: made.due?.text ?? null,
  };
  return {
    fields,
    evidence: evidenceOf(made, scan),
    span: spanOf(scan, made.span),
    brands: made.used.brands,
    doneBy: null,
  };
};
