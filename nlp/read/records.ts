import type { Edtf } from "../../shared/record.ts";
import { systemOf } from "../../shared/vocabulary.ts";
import { dateOf } from "./dates.ts";
import { dueOf } from "./due.ts";
import type { Context, Event, Told } from "./events.ts";
import { exposuresOf } from "./exposures.ts";
import { type Made, NOTHING_USED } from "./made.ts";
import { type Judged, judge } from "./outcome.ts";
import type { Stretch } from "./scan.ts";
import { materialsOf } from "./uses.ts";
import type { Places } from "./where.ts";
import { startingIn, touching } from "./windows.ts";
import { SUBJECTS } from "./words.ts";

export type Build = Context & { readonly places: Places; readonly today: Edtf; readonly muted: Uint8Array };

const NO_CLAUSE = { from: 0, to: 0, hard: true, subordinate: false };

const faultIn = (told: Told, { clauses, index }: Build, from: number, to: number): Stretch | null => {
  const fault = startingIn(told.faults, from, to)[0];
  const clause = fault && clauses[index[fault.from] ?? 0];
  if (fault === undefined || clause === undefined) return null;
  return { from: Math.max(clause.from, fault.from - 4), to: Math.min(clause.to, fault.to + 3) };
};

const costOf = (told: Told, event: Event): Made["cost"] => {
  const money = told.amounts.find(
    (each) => each.what === "money" && each.from >= event.from && each.from < event.to,
  );
  return money === undefined ? null : { value: money.value, at: money };
};

const whereOf = (told: Told, event: Stretch, { places }: Build): Stretch | undefined => {
  const mention = told.topic.mentions
    .map((ref) => places.ofMention(ref))
    .find((found) => found !== undefined);
  const start = told.topic.stretches[0]?.from ?? event.from;
  const { mentions } = told.topic;
  return (
    mention ?? places.within(event, mentions) ?? places.within({ from: start, to: event.from }, mentions)
  );
};

const PAST_STATE = new Set(["was", "were", "old", "because", "had", "been", "where"]);
const NOW_AGAIN = new Set(["again", "still", "now", "already"]);

/** A fault told after a deed that tells how it went on, not why it was done. */
const tellsOutcome = (
  fault: Told["faults"][number],
  deedClause: number,
  { scan, clauses, index }: Build,
): boolean => {
  const at = index[fault.from] ?? 0;
  const clause = clauses[at];
  if (clause === undefined || fault.value < 2 || at === deedClause) return false;
  const words = scan.tokens.slice(clause.from, Math.min(clause.to, fault.to + 2)).map((token) => token.norm);
  return words.some((word) => NOW_AGAIN.has(word)) || !words.some((word) => PAST_STATE.has(word));
};

const CONTRASTS = new Set([
  "but",
  "though",
  "although",
  "only",
  "still",
  "except",
  "it",
  "its",
  "they",
  "just",
  "however",
  "she",
]);
/** Told against the good verdict before it: "keeps the rain out but it whistles". */
const contrasts = (fault: Stretch, { scan, clauses, index }: Build): boolean => {
  const from = clauses[index[fault.from] ?? 0]?.from ?? 0;
  const words = scan.tokens.slice(from, from + 2).map((token) => token.norm);
  return CONTRASTS.has(words[0] ?? "") || (words[0] === "and" && CONTRASTS.has(words[1] ?? ""));
};

const judged = (told: Told, event: Event, early: Told["verdicts"], build: Build): Judged => {
  if (event.action === "remove") return { outcome: "untested", spans: [], rule: "removed" };
  const work = event.deeds.filter((deed) => deed.sense !== "prep");
  const after = Math.min(...(work.length > 0 ? work : event.deeds).map((deed) => deed.at));
  const last = event.deeds.at(-1);
  const verdicts = startingIn(told.verdicts, after + 1, event.to);
  const faults = startingIn(told.faults, last?.at ?? 0, event.to).filter(
    (fault) =>
      fault.from > (last?.at ?? 0) && fault.from < event.to && tellsOutcome(fault, last?.clause ?? -1, build),
  );
  const result = judge(
    verdicts,
    faults,
    faults.filter((fault) => contrasts(fault, build)),
  );
  return result.outcome === "untested" && result.spans.length === 0 && early.length > 0
    ? judge(early, [], [])
    : result;
};

const ofWork = (told: Told, event: Event, early: Told["verdicts"], build: Build): Made => {
  const source = event.like ?? { event, told };
  const isRepair = event.kind === "work";
  return {
    kind: isRepair ? "repair" : "check",
    told,
    event,
    action: event.action,
    dated: dateOf(event, told, build.scan, build.clauses, build.index, build.today),
    judged: judged(told, event, early, build),
    used: isRepair ? materialsOf(source.event, source.told, build.scan) : NOTHING_USED,
    where: event.like === null ? whereOf(told, event, build) : build.places.within(event, []),
    exposure: isRepair
      ? exposuresOf(told, event, build.scan, (at) => build.clauses[build.index[at] ?? 0] ?? NO_CLAUSE)
      : [],
    cost: costOf(told, event),
    fault: faultIn(source.told, build, source.event.from, source.event.to),
    due: null,
    span: { from: event.from, to: event.to },
  };
};

const ofPlan = (told: Told, event: Event, whole: Stretch, build: Build): Made => ({
  kind: "todo",
  told,
  event,
  action: event.action,
  dated: undefined,
  judged: null,
  used: materialsOf(event, told, build.scan),
  where: whereOf(told, event, build),
  exposure: [],
  cost: costOf(told, event),
  fault: faultIn(told, build, whole.from, whole.to),
  due: dueOf(event, build.scan, build.clauses, build.index),
  span: { from: event.from, to: event.to },
});

/** Small fixes that a later, larger one of the same trouble replaces because they did not do. */
const SMALL: ReadonlySet<string> = new Set([
  "patch",
  "seal",
  "refasten",
  "adjust",
  "tighten",
  "repair",
  "clean",
  "reset",
  "lubricate",
]);
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

const shared = (made: readonly Made[]): Made[] => {
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

/** Work not done becomes a todo when it is still meant to be. */
const isMeant = (event: Event, build: Build): boolean => {
  const until = Math.min(event.to, (event.deeds.at(-1)?.to ?? event.to) + 25);
  const cue = startingIn(build.scan.cues, event.from, until).some(
    (each) => each.value === "plan" && each.from >= event.from && each.from < until,
  );
  return cue || dueOf(event, build.scan, build.clauses, build.index) !== null;
};
const NEAR_CLAUSES = 2;
/** Openers of what is only imagined. */
const SUPPOSED = new Set(["until", "till", "if", "unless"]);

/** What is said of a thing that nothing was done to, near where it is named. */
const withoutDeed = (told: Told, build: Build): Made | undefined => {
  const { clauses, index, muted } = build;
  const near = (ref: Stretch): boolean =>
    !SUPPOSED.has(build.scan.tokens[clauses[index[ref.from] ?? 0]?.from ?? 0]?.norm ?? "") &&
    told.topic.mentions.some((mention) => {
      const [first, last] = [index[mention.from] ?? 0, index[ref.from] ?? 0];
      if (last < first || last > first + NEAR_CLAUSES) return false;
      return !clauses.slice(first, last).some((clause) => muted[clause.to - 1] === 1);
    });
  const mine = { ...told, faults: told.faults.filter(near), verdicts: told.verdicts.filter(near) };
  const from = told.topic.stretches[0]?.from ?? 0;
  const to = told.topic.stretches.at(-1)?.to ?? from;
  const base = {
    told,
    event: null,
    used: NOTHING_USED,
    where: whereOf(told, { from, to }, build),
    exposure: [],
    cost: null,
    due: null,
    span: { from, to },
    dated: undefined,
  };
  const fault = faultIn(mine, build, from, to);
  const verdict = mine.verdicts.at(-1);
  const good = verdict?.value.outcome === "holding" || verdict?.value.outcome === "partly";
  if (fault !== null && !good)
    return {
      ...base,
      kind: retold(told, build) ? "check" : "fault",
      action: retold(told, build) ? "inspect" : null,
      judged: retold(told, build) ? FAILED : null,
      fault,
    };
  if (verdict === undefined || verdict.value.outcome === "untested") return undefined;
  if (verdict.value.outcome === "failed" && !retold(told, build))
    return { ...base, kind: "fault", action: null, judged: null, fault: fault ?? verdict };
  if (!close(told, verdict, build))
    return fault === null ? undefined : { ...base, kind: "fault", action: null, judged: null, fault };
  return { ...base, kind: "check", action: "inspect", judged: judge(mine.verdicts, [], []), fault };
};

const FAILED: Judged = { outcome: "failed", spans: [], rule: "earlier-work-failed" };
const EARLIER = new Set(["update", "patch", "repair", "fix", "fail", "followup", "job", "bodge"]);
const NOT_EARLIER = new Set(["wet", "damp", "soft", "bald", "to", "a", "good"]);

/** Speaks of earlier work that this note does not retell: "update on the door seal: wet again". */
const retold = (told: Told, { scan }: Build): boolean => {
  const [from, to] = [
    Math.max(0, (told.topic.stretches[0]?.from ?? 0) - 3),
    told.topic.stretches.at(-1)?.to ?? 0,
  ];
  return scan.tokens
    .slice(from, to)
    .some((token, at, all) => EARLIER.has(token.norm) && !NOT_EARLIER.has(all[at - 1]?.norm ?? ""));
};

const GOES_ON = new Set([
  "it",
  "its",
  "that",
  "they",
  "theyre",
  "still",
  "and",
  "all",
  "no",
  "not",
  "shes",
  "hes",
  "she",
  "he",
  "thats",
  "both",
  "but",
]);

const CLOSE_TOKENS = 9;

/** Said in the clause that names the thing, or right after it of the same thing, and not hoped for. */
const close = (told: Told, verdict: Stretch, { clauses, index, scan }: Build): boolean => {
  const hoped = scan.tokens
    .slice(Math.max(0, verdict.from - 3), verdict.to)
    .some((token) => token.norm === "hope");
  return (
    !hoped &&
    told.topic.mentions.some((mention) => {
      if (mention.weak && told.topic.mentions.length === 1) return false;
      if (verdict.from < mention.from || verdict.from - mention.to > CLOSE_TOKENS) return false;
      if (
        touching(scan.components, mention.to, verdict.from).some(
          (ref) => ref.from >= mention.to && ref.from < verdict.from && ref.id !== mention.id,
        )
      )
        return false;
      const [first, last] = [index[mention.from] ?? 0, index[verdict.from] ?? 0];
      const opener = scan.tokens[clauses[last]?.from ?? 0]?.norm ?? "";
      return (
        first === last ||
        (last === first + 1 &&
          (GOES_ON.has(opener) || (clauses[last]?.hard === false && !SUBJECTS.has(opener))))
      );
    })
  );
};

/** An alarm that sounds when it is tested does its job. */
const sounds = (told: Told, look: Event): boolean =>
  systemOf(told.topic.component) === "alarms" &&
  look.action === "test" &&
  !told.verdicts.some((verdict) => verdict.value.outcome === "failed");
const SOUNDED: Judged = { outcome: "holding", spans: [], rule: "alarm-sounded" };

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
      (cue) => cue.value === "refuse" && cue.from >= end && cue.from < end + 10 && muted[cue.from] === 1,
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
    const made = works.map((event) => ofWork(told, event, event === lastWork ? early : [], build));
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
