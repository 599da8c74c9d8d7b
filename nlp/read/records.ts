import { systemOf } from "../../shared/vocabulary.ts";
import type { Build } from "./build.ts";
import { costOf } from "./costs.ts";
import { dateOf } from "./dates.ts";
import { dueOf } from "./due.ts";
import { exposuresOf } from "./exposures.ts";
import { faultIn, NO_CLAUSE, whereOf } from "./fields.ts";
import { judged } from "./judged.ts";
import { type Made, NOTHING_USED } from "./made.ts";
import { isMuted } from "./muted.ts";
import type { Judged } from "./outcome.ts";
import type { Stretch } from "./scan.ts";
import { shared } from "./shared.ts";
import type { Event, Told } from "./told.ts";
import { materialsOf } from "./uses.ts";
import { startingIn } from "./windows.ts";
import { FAILED, retold, withoutDeed } from "./without-deed.ts";

export const ofWork = (
  told: Told,
  event: Event,
  early: Told["verdicts"],
  build: Build,
  earlier?: Event,
): Made => {
  const source = event.like ?? { event, told };
  const isRepair = event.kind === "work";
  return {
    kind: isRepair ? "repair" : "check",
    told,
    event,
    action: event.action,
    dated: dateOf(event, told, earlier, build),
    judged: judged(told, event, early, build),
    used: isRepair ? materialsOf(source.event, source.told, build.scan) : NOTHING_USED,
    where: event.like === null ? whereOf(told, event, build) : build.places.within(event, []),
    exposure: isRepair
      ? exposuresOf(told, event, build.scan, (at) => build.clauses[build.index[at] ?? 0] ?? NO_CLAUSE)
      : [],
    cost: costOf(told, event, build),
    fault: faultIn(source.told, build, source.event.from, source.event.to),
    due: null,
    span: { from: event.from, to: event.to },
    sure: {},
  };
};

export const ofPlan = (told: Told, event: Event, whole: Stretch, build: Build): Made => ({
  kind: "todo",
  told,
  event,
  action: event.action,
  dated: undefined,
  judged: null,
  used: materialsOf(event, told, build.scan),
  where: whereOf(told, event, build),
  exposure: [],
  cost: costOf(told, event, build),
  fault: faultIn(told, build, whole.from, whole.to),
  due: dueOf(event, build.scan, build.clauses, build.index),
  span: { from: event.from, to: event.to },
  sure: {},
});

/** Work not done becomes a todo when it is still meant to be. */
const isMeant = (event: Event, build: Build): boolean => {
  const until = Math.min(event.to, (event.deeds.at(-1)?.to ?? event.to) + 25);
  const cue = startingIn(build.scan.cues, event.from, until).some(
    (each) => each.value === "plan" && each.from >= event.from && each.from < until,
  );
  return cue || dueOf(event, build.scan, build.clauses, build.index) !== null;
};
/** An alarm that sounds when it is tested does its job. */
export const sounds = (told: Told, look: Event): boolean =>
  systemOf(told.topic.component) === "alarms" &&
  look.action === "test" &&
  !told.verdicts.some((verdict) => verdict.value.outcome === "failed");
export const SOUNDED: Judged = { outcome: "holding", spans: [], rule: "alarm-sounded" };

/** A look that is over, not one that goes on. */
const LOOKED = /(?:ed|nt|ave|ook|an|ut)$/;

const ofLook = (told: Told, look: Event, whole: Stretch, build: Build): Made | undefined => {
  if (sounds(told, look))
    return {
      ...ofWork(told, { ...look, from: whole.from, to: whole.to }, [], build),
      judged: SOUNDED,
      fault: null,
    };
  const check = ofWork(told, { ...look, from: whole.from, to: whole.to }, told.verdicts, build);
  if (
    check.judged?.outcome === "untested" &&
    check.fault === null &&
    !look.deeds.some((deed) => LOOKED.test(build.scan.tokens[deed.at]?.norm ?? ""))
  )
    return undefined;
  if (check.judged?.outcome === "untested" && check.fault === null)
    return { ...check, judged: { outcome: "holding", spans: [], rule: "looked-and-said-no-more" } };
  if (check.judged?.outcome === "holding" || check.fault === null || retold(told, build))
    return check.judged?.outcome === "untested" ? { ...check, judged: FAILED } : check;
  return { ...check, kind: "fault", action: null, judged: null };
};

/** Thought of and turned down: "should rip it out, and no, we are not ripping it out". */
const isRefused = (event: Event, told: Told, { scan, muted }: Build): boolean => {
  const end = event.deeds.at(-1)?.to ?? event.to;
  const again = told.deeds.some(
    (deed) =>
      deed.status === "not" &&
      deed.at > end &&
      deed.at < end + 20 &&
      (deed.action === event.action || deed.sense === "generic"),
  );
  return (
    again ||
    startingIn(scan.cues, end, end + 10).some(
      (cue) => cue.value === "refuse" && cue.from >= end && cue.from < end + 10 && isMuted(muted, cue.from),
    )
  );
};

/** A deed by a verb that nobody knows counts as work only after trouble was told. */
const isSure = (event: Event, told: Told): boolean => {
  const unknown = event.deeds.every((deed) => deed.source === "unknown-verb~" && deed.sense === "generic");
  const first = event.deeds[0]?.at ?? 0;
  return (
    !unknown ||
    (told.faults.some((fault) => fault.value === 2 && fault.from < first) &&
      told.verdicts.some((verdict) => verdict.from > first && verdict.from < event.to))
  );
};

/** The records of one topic. */
export const recordsOf = (told: Told, events: readonly Event[], build: Build): Made[] => {
  const whole = { from: told.topic.stretches[0]?.from ?? 0, to: told.topic.stretches.at(-1)?.to ?? 0 };
  const works = events.filter((event) => event.kind === "work" && isSure(event, told));
  const plans = events.filter(
    (event) =>
      (event.kind === "plan" && !isRefused(event, told, build)) ||
      (event.kind === "undone" && isMeant(event, build)),
  );
  const lastWork = works.at(-1);
  if (lastWork !== undefined) {
    const firstDeed = works[0]?.deeds[0]?.from ?? 0;
    const early = told.verdicts.filter(
      (verdict) => verdict.from < firstDeed && verdict.value.outcome !== "failed",
    );
    const later = plans.filter((plan) => {
      const looks = plan.action === "test" || plan.action === "inspect";
      return (
        plan.from >= lastWork.from && (!looks || dueOf(plan, build.scan, build.clauses, build.index) !== null)
      );
    });
    const made = works.map((event, at) =>
      ofWork(told, event, event === lastWork ? early : [], build, works[at - 1]),
    );
    return [...shared(made), ...later.slice(0, 1).map((event) => ofPlan(told, event, event, build))];
  }
  const plan = plans[0];
  if (plan !== undefined) return [ofPlan(told, plan, whole, build)];
  const look = events.find((event) => event.kind === "look");
  const looked = look && ofLook(told, look, whole, build);
  if (looked !== undefined) return [looked];
  const rest = withoutDeed(told, build);
  return rest === undefined ? [] : [rest];
};
