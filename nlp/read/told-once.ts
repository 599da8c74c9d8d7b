import type { Draft } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { Action, ComponentId } from "../../shared/vocabulary.ts";

const agree = <T>(one: T | null, other: T | null): boolean => one === null || other === null || one === other;

const within = (some: readonly string[], all: readonly string[]): boolean =>
  some.every((each) => all.includes(each));

/** "The other end": another place, though the first is not named. */
const OTHER = /\b(?:other|both|each|second|opposite)\b/i;

const samePlace = (one: RecordFields, other: RecordFields): boolean =>
  agree(one.where, other.where) && !OTHER.test(`${one.where ?? ""} ${other.where ?? ""}`);

/** What names the thing of a draft, in the words of its note. */
const nameIn = ({ evidence }: Draft, text: string): string | undefined => {
  const span = evidence.component?.spans[0];
  return span === undefined ? undefined : text.slice(span.start, span.end).toLowerCase();
};

/** "The porch light", "the scare light": two, though both light the outside. */
const sameName = (one: Draft, other: Draft, text: string): boolean => {
  const [a, b] = [nameIn(one, text), nameIn(other, text)];
  return a === undefined || b === undefined || a.includes(b) || b.includes(a);
};

/** To look after something says no more than what is to be done to it. */
const isVague = ({ action }: RecordFields): boolean => action === null || action === "inspect";

const oneIntention = (one: RecordFields, other: RecordFields): boolean =>
  (one.action === other.action || isVague(one) || isVague(other)) && agree(one.due, other.due);

const RINSES: ReadonlySet<Action | null> = new Set(["flush", "clean"]);
const HOLDS_WATER: ReadonlySet<ComponentId> = new Set([
  "water-heater",
  "fresh-tank",
  "gray-tank",
  "black-tank",
  "water-line",
]);

/** "Drained the water heater and rinsed the grit out of it": what is flushed is cleaned by it. */
const isRinse = (one: RecordFields, other: RecordFields): boolean =>
  HOLDS_WATER.has(one.component) && RINSES.has(one.action) && RINSES.has(other.action);

const oneWork = (one: RecordFields, other: RecordFields): boolean =>
  (one.action === other.action || isRinse(one, other)) &&
  one.where === other.where &&
  one.date !== null &&
  one.date === other.date &&
  (one.outcome === other.outcome || one.outcome === "untested" || other.outcome === "untested") &&
  (within(one.materials, other.materials) || within(other.materials, one.materials)) &&
  (one.exposure.length === 0 || other.exposure.length === 0);

const isOne = (one: RecordFields, other: RecordFields): boolean =>
  one.kind === other.kind &&
  one.component === other.component &&
  samePlace(one, other) &&
  agree(one.cost, other.cost) &&
  ((one.kind === "todo" && oneIntention(one, other)) || (one.kind === "repair" && oneWork(one, other)));

const SAME = ["kind", "component", "action", "where", "date", "due"] as const;

/** Whether the later telling says nothing that the earlier does not say of the same, by whatever name. */
const addsNothing = (later: RecordFields, earlier: RecordFields): boolean =>
  SAME.every((field) => later[field] === earlier[field]) &&
  (later.outcome === earlier.outcome || later.outcome === "untested") &&
  agree(later.cost, earlier.cost) &&
  (later.cost === null || earlier.cost !== null) &&
  later.exposure.length === 0 &&
  within(later.materials, earlier.materials);

/** Both tellings in one: what either says of it. */
const joined = (one: Draft, other: Draft): Draft => {
  const [plainer, vaguer] = isVague(one.fields) ? [other, one] : [one, other];
  const [a, b] = [plainer.fields, vaguer.fields];
  return {
    ...plainer,
    evidence: { ...vaguer.evidence, ...plainer.evidence },
    span: {
      start: Math.min(one.span.start, other.span.start),
      end: Math.max(one.span.end, other.span.end),
    },
    brands: [...new Set([...one.brands, ...other.brands])],
    doneBy: plainer.doneBy ?? vaguer.doneBy,
    fields: {
      ...a,
      action: isRinse(a, b) && b.action === "flush" ? b.action : a.action,
      where: a.where ?? b.where,
      due: a.due ?? b.due,
      cost: a.cost ?? b.cost,
      fault: a.fault ?? b.fault,
      outcome: a.outcome === "untested" ? b.outcome : a.outcome,
      exposure: a.exposure.length > 0 ? a.exposure : b.exposure,
      materials: [...new Set([...a.materials, ...b.materials])],
    },
  };
};

/**
 * One record of what a note comes back to: of what it only tells again ("the smoke alarm ..., both went off"), of an
 * intention ("we need a gas alarm, gonna get one before winter"), and of work of one day on one thing of which nothing
 * differs ("cut the soft spot out and let in new plywood, ninety dollars").
 */
export const toldOnce = (drafts: readonly Draft[], text: string): readonly Draft[] => {
  const kept: Draft[] = [];
  for (const draft of drafts) {
    if (kept.some(({ fields }) => addsNothing(draft.fields, fields))) continue;
    const at = kept.findIndex((each) => isOne(each.fields, draft.fields) && sameName(each, draft, text));
    const before = kept[at];
    if (before === undefined) kept.push(draft);
    else kept[at] = joined(before, draft);
  }
  return kept;
};
