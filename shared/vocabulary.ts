import vocabulary from "./vocabulary.json" with { type: "json" };

type KeysOfUnion<T> = T extends T ? keyof T : never;
type Systems = typeof vocabulary.systems;

export type Kind = keyof typeof vocabulary.kinds;
export type Outcome = keyof typeof vocabulary.outcomes;
export type Action = keyof typeof vocabulary.actions;
export type Consequence = keyof typeof vocabulary.consequences;
export type SystemId = keyof Systems;
export type ComponentId = KeysOfUnion<Systems[SystemId]>;

const keys = <T extends object>(object: T) => Object.keys(object) as (keyof T & string)[];

export const KINDS: readonly Kind[] = keys(vocabulary.kinds);
export const OUTCOMES: readonly Outcome[] = keys(vocabulary.outcomes);
export const ACTIONS: readonly Action[] = keys(vocabulary.actions);
export const SYSTEMS: readonly SystemId[] = keys(vocabulary.systems);

type ComponentEntry = {
  readonly id: ComponentId;
  readonly system: SystemId;
  readonly consequence: Consequence;
};

const entries: readonly ComponentEntry[] = SYSTEMS.flatMap((system) =>
  Object.entries(vocabulary.systems[system]).map(([id, entry]: [string, { consequence: string }]) => ({
    id: id as ComponentId,
    system,
    consequence: entry.consequence as Consequence,
  })),
);
const byId = new Map(entries.map((entry) => [entry.id, entry]));

export const COMPONENTS: readonly ComponentId[] = entries.map((entry) => entry.id);

const entryOf = (id: ComponentId): ComponentEntry => {
  const entry = byId.get(id);
  if (entry === undefined) throw new Error(`No component has the id "${id}".`);
  return entry;
};

export const systemOf = (id: ComponentId): SystemId => entryOf(id).system;
export const consequenceOf = (id: ComponentId): Consequence => entryOf(id).consequence;
export const componentsOf = (system: SystemId): readonly ComponentId[] =>
  entries.filter((entry) => entry.system === system).map((entry) => entry.id);

const SPOKEN: Partial<Record<ComponentId, string>> = {
  "co-alarm": "carbon monoxide alarm",
  "slide-out": "slide",
  "shore-power": "shore power",
  "tow-plug": "tow plug",
};

/** The component as a person says it: "gray tank". */
export const componentName = (id: ComponentId): string => SPOKEN[id] ?? id.replaceAll("-", " ");
