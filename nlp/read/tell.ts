import type { Action, ComponentId } from "../../shared/vocabulary.ts";
import type { Build } from "./build.ts";
import type { Chosen } from "./chosen.ts";
import { type Deed, IMPLIED } from "./deed.ts";
import { eventsOf } from "./events.ts";
import { actionSigns } from "./field-signs.ts";
import { faultIn } from "./fields.ts";
import { verdictsOn } from "./heat.ts";
import type { Said } from "./holds.ts";
import type { Judges } from "./judges.ts";
import type { Made } from "./made.ts";
import { judge } from "./outcome.ts";
import { ofPlan, ofWork, SOUNDED, sounds } from "./records.ts";
import type { Scan, Stretch } from "./scan.ts";
import type { Setting } from "./setting.ts";
import { shared } from "./shared.ts";
import type { Telling } from "./tellings.ts";
import type { Event, Like, Told } from "./told.ts";
import type { Topic } from "./topics.ts";
import type { Verdict } from "./verdicts.ts";
import { startingIn } from "./windows.ts";
import { bareRecord, FAILED } from "./without-deed.ts";

const NEARBY = 12;

const topicFor = (setting: Setting, { ref, telling }: Chosen, segment: Stretch): Topic => {
  const again = startingIn(setting.named, Math.min(segment.from, ref.from - NEARBY), segment.to).filter(
    (each) => each.id === ref.id && each.from !== ref.from && each.from < telling.to + NEARBY,
  );
  return {
    component: ref.id,
    ref,
    mentions: [ref, ...again].sort((a, b) => a.from - b.from),
    stretches: [{ ...segment }],
    partner: null,
  };
};

const STATUS = { repair: "done", check: "done", todo: "plan", fault: "talk" } as const;

/** The deed of a record: the one found there, or one that its words only imply. */
const deedOf = ({ telling, kind }: Chosen, alive: Said): Deed => {
  const status = STATUS[kind];
  if (telling.deed !== undefined)
    return telling.deed.status === status ? telling.deed : { ...telling.deed, status };
  const materials = startingIn(alive.materials, telling.from, telling.to);
  return {
    from: telling.at,
    to: telling.at + 1,
    at: telling.at,
    clause: telling.clause,
    sense: kind === "check" ? "look" : kind === "todo" ? "new" : materials.length > 0 ? "apply" : "generic",
    action: kind === "check" ? "inspect" : kind === "todo" ? "replace" : null,
    status,
    source: IMPLIED,
  };
};

const toldIn = (
  setting: Setting,
  each: Chosen,
  segment: Stretch,
  alive: Said,
): { told: Told; deed: Deed } => {
  const mine = <T extends Stretch>(refs: readonly T[]): readonly T[] =>
    startingIn(refs, segment.from, segment.to);
  const deed = deedOf(each, alive);
  const deeds = [...mine(alive.deeds).filter((other) => other !== each.telling.deed), deed].sort(
    (a, b) => a.at - b.at,
  );
  return {
    deed,
    told: {
      topic: topicFor(setting, each, segment),
      deeds,
      verdicts: verdictsOn(each.ref.id, mine(alive.verdicts), setting.scan),
      faults: mine(alive.faults),
      times: mine(alive.times),
      amounts: mine(alive.amounts),
      materials: mine(alive.materials),
      again: alive.again,
    },
  };
};

const actionOf = (
  told: Told,
  deed: Deed,
  kind: "repair" | "todo" | "check",
  ruled: Action,
  build: Build,
  judges: Judges,
): Action => {
  const action = judges.action(actionSigns(told, deed, kind, ruled, build), ruled, deed);
  return action === "lubricate" && NOTHING_TO_GREASE.has(told.topic.component) ? "clean" : action;
};
/** "Did the mould on the ceiling with clove oil": what has no part that moves is wiped with oil. */
const NOTHING_TO_GREASE: ReadonlySet<ComponentId> = new Set(["ceiling", "wall", "floor", "roof", "sidewall"]);

/** The piece of work that a deed is the heart of. */
const workOf = (
  told: Told,
  deed: Deed,
  segment: Stretch,
  build: Build,
  before: Like | null,
  judges: Judges,
): Event => {
  const events = eventsOf(
    {
      ...told,
      deeds: told.deeds.filter((each) => each.status === "done" && (each === deed || each.sense !== "look")),
    },
    build,
    before,
  );
  const own =
    events.find((event) => event.deeds.includes(deed)) ?? events.findLast((event) => event.kind === "work");
  const deeds = events.filter((event) => event.kind === "work").flatMap((event) => event.deeds);
  return {
    kind: "work",
    action:
      own?.like != null
        ? own.action
        : actionOf(told, deed, "repair", own?.action ?? deed.action ?? "repair", build, judges),
    deeds: deeds.includes(deed) ? deeds : [deed],
    from: segment.from,
    to: segment.to,
    like: own?.like ?? null,
  };
};

/** As far before what is told, in words, as how it went may be told. */
const LED = 12;
/** "The bolt tore out and the drawer is on the floor again": how it went, told right before the thing is named. */
const ledInto = ({ from }: Stretch, { scan }: Build): readonly Verdict[] =>
  startingIn(scan.verdicts, from - LED, from).slice(-1);

const checkOf = (
  told: Told,
  deed: Deed,
  each: Chosen,
  segment: Stretch,
  build: Build,
  judges: Judges,
): Made => {
  const fault = faultIn(told, build, segment.from, segment.to);
  const ruled = deed.action === "test" ? "test" : "inspect";
  const action = actionOf(told, deed, "check", ruled, build, judges) === "test" ? "test" : "inspect";
  const event: Event = {
    kind: "look",
    action,
    deeds: [deed],
    from: segment.from,
    to: segment.to,
    like: null,
  };
  if (each.telling.deed !== undefined && sounds(told, event))
    return { ...ofWork(told, event, [], build), judged: SOUNDED, fault: null };
  const heard = judge(
    told.verdicts.length > 0 || each.telling.deed?.sense === "look" ? told.verdicts : ledInto(segment, build),
    [],
    [],
  );
  const judged =
    heard.outcome !== "untested"
      ? heard
      : fault === null
        ? ({ outcome: "holding", spans: [], rule: "looked-and-said-no-more" } as const)
        : FAILED;
  if (each.telling.deed?.sense !== "look")
    return { ...bareRecord(told, segment, fault, { judged }, build), action };
  return { ...ofWork(told, event, told.verdicts, build), judged, fault };
};

const planOf = (told: Told, deed: Deed, segment: Stretch, build: Build, judges: Judges): Made => {
  const events = eventsOf(
    { ...told, deeds: told.deeds.filter((each) => each.status === "plan") },
    build,
    null,
  );
  const own = events.find((event) => event.deeds.includes(deed));
  const event: Event = {
    kind: "plan",
    action: actionOf(told, deed, "todo", own?.action ?? deed.action ?? "repair", build, judges),
    deeds: [deed],
    from: segment.from,
    to: segment.to,
    like: null,
  };
  return ofPlan(told, event, segment, build);
};

/** "Hasn't quit once": all that is told there is trouble denied. */
const isDenied = (told: Told, { from, to }: Telling, { faults }: Scan): boolean => {
  const heard = startingIn(told.verdicts, from, to);
  const denies = ({ value, source, ...at }: Verdict): boolean =>
    value.outcome === "holding" &&
    source.startsWith("%hasnot") &&
    startingIn(faults, at.from, at.to).length > 0;
  return heard.length > 0 && heard.every(denies) && startingIn(told.faults, from, to).length === 0;
};

const LONGEST_FAULT = 9;

const MOST_SURE = 0.99;

/** Told on of the thing named before, it is where it was then; and how sure the judges are of it. */
const settled = (made: Made, before: Made | undefined, chosen: Chosen | undefined): Made => {
  if (chosen === undefined) return made;
  const anew = before === undefined || chosen.ref.from >= made.span.from;
  return {
    ...made,
    where: made.where ?? (anew ? undefined : before.where),
    sure: { kind: Math.min(MOST_SURE, chosen.sureKind), component: Math.min(MOST_SURE, chosen.sureAim) },
  };
};

/** The records that the chosen places of a note come to, each from its own stretch. */
export const toldRecords = (
  setting: Setting,
  chosen: readonly Chosen[],
  segments: readonly Stretch[],
  alive: Said,
  build: Build,
  judges: Judges,
): Made[] => {
  let before: Like | null = null;
  const made: Made[] = [];
  for (const [at, each] of chosen.entries()) {
    const segment = segments[at] ?? each.telling;
    const { told, deed } = toldIn(setting, each, segment, alive);
    if (each.kind === "repair") {
      const event = workOf(told, deed, segment, build, before, judges);
      const first = event.deeds[0]?.from ?? deed.from;
      const early = told.verdicts.filter(
        (verdict) => verdict.from < first && verdict.value.outcome !== "failed",
      );
      const earlier = before?.told.topic.component === each.ref.id ? before.event : undefined;
      made.push(ofWork(told, event, early, build, earlier));
      before = { event, told };
    } else if (each.kind === "todo") made.push(planOf(told, deed, segment, build, judges));
    else if (each.kind === "check" || isDenied(told, each.telling, setting.scan))
      made.push(checkOf(told, deed, each, segment, build, judges));
    else {
      const trouble =
        faultIn(told, build, each.telling.from, each.telling.to) ??
        faultIn(told, build, segment.from, segment.to);
      const words = {
        from: each.telling.from,
        to: Math.min(each.telling.to, each.telling.from + LONGEST_FAULT),
      };
      made.push(bareRecord(told, segment, trouble ?? words, null, build));
    }
  }
  const byName = new Map<string, Made[]>();
  for (const [at, record] of made.entries()) {
    const same = byName.get(record.told.topic.component) ?? [];
    same.push(settled(record, same.at(-1), chosen[at]));
    byName.set(record.told.topic.component, same);
  }
  const order = new Map(made.map((each, at) => [each.told, at]));
  return [...byName.values()]
    .flatMap(shared)
    .sort((a, b) => (order.get(a.told) ?? 0) - (order.get(b.told) ?? 0));
};
