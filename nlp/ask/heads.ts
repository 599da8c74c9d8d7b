import { placeOf } from "../../shared/memory/place.ts";
import type { Named } from "../../shared/memory/query.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import type { Mention } from "./names.ts";

/** Words after which a thing is named as a place: "the socket by the bed". */
const BESIDE: ReadonlySet<string> = new Set(
  "by over under near beside behind above below next around round at between inside outside underneath beneath against opposite".split(
    " ",
  ),
);
/** Words for a place well apart from the thing named with it. */
const OVER: ReadonlySet<string> = new Set(
  "over above under below beneath underneath beside near behind".split(" "),
);
/** Words after which a thing may own what was named before: "the seal on the fridge". */
const AMONG: ReadonlySet<string> = new Set("in on to for off of from".split(" "));

/** "The battery in the smoke alarm": of the thing that it is in, and no battery of the rig. */
const HAS_OWN: Readonly<Partial<Record<ComponentId, readonly ComponentId[]>>> = {
  battery: ["thermostat", "smoke-alarm", "co-alarm", "gas-alarm", "media"],
};

const SMALL: ReadonlySet<string> = new Set("the a an my our that this those these to of".split(" "));

const sureOf = (mention: Mention): number => Math.max(0, ...mention.named.map(({ sure }) => sure));

const demote = (mention: Mention, to: number): Mention => ({
  ...mention,
  named: mention.named.map((named) => ({ ...named, sure: Math.min(named.sure, to) })),
});

const linkWord = (words: readonly string[], before: Mention, mention: Mention): string | undefined =>
  words
    .slice(before.to, mention.from)
    .filter((word) => !SMALL.has(word))
    .at(-1);

/** "bed socket": the thing is the socket, the bed only says which. */
const isModifier = (mention: Mention, next: Mention | undefined): boolean =>
  next !== undefined && next.from === mention.to && sureOf(next) >= 0.5;

const isPlace = (words: readonly string[], before: Mention | undefined, mention: Mention): boolean => {
  if (before === undefined || sureOf(before) < 0.5) return false;
  const link = linkWord(words, before, mention);
  if (link === undefined) return false;
  const isRoom = link === "in" && placeOf(words.slice(mention.from, mention.to).join(" ")).has("room");
  return BESIDE.has(link) || isRoom || (AMONG.has(link) && sureOf(before) >= 0.9);
};

/** How a thing has its place: "the flap the bottles sit behind". */
const LIES: ReadonlySet<string> = new Set(
  "sit sits live lives stand stands hang hangs hide hides go goes ride rides fit fits is are".split(" "),
);

/** "The flap the propane sits behind": the flap is meant, and the propane tells which. */
const tellsWhich = (words: readonly string[], before: Mention | undefined, mention: Mention): boolean =>
  before !== undefined &&
  sureOf(before) >= 0.5 &&
  words.slice(before.to, mention.from).every((word) => SMALL.has(word) || word === "where") &&
  LIES.has(words[mention.to] ?? "") &&
  (BESIDE.has(words[mention.to + 1] ?? "") || AMONG.has(words[mention.to + 1] ?? ""));

/** Words that name nothing themselves: "that thing above the stove". */
const VAGUE: ReadonlySet<string> = new Set(
  "thing thingy thingamajig gizmo contraption gadget whatsit doodah doohickey".split(" "),
);

/** "The thing above the stove" is anything but the stove. */
const isOnlyPlace = (words: readonly string[], mention: Mention): boolean => {
  const lead = words.slice(Math.max(0, mention.from - 4), mention.from).filter((word) => !SMALL.has(word));
  return OVER.has(lead.at(-1) ?? "") && VAGUE.has(lead.at(-2) ?? "");
};

const isOfNext = (words: readonly string[], mention: Mention, next: Mention | undefined): boolean => {
  if (next === undefined || !AMONG.has(linkWord(words, mention, next) ?? "")) return false;
  return mention.named.some(
    ({ component, sure }) =>
      sure >= 0.9 &&
      next.named.some((each) => each.sure >= 0.6 && HAS_OWN[component]?.includes(each.component)),
  );
};

/** The things meant, without those that only say where: their sureness is lowered, not lost. */
export const weighMentions = (words: readonly string[], mentions: readonly Mention[]): readonly Mention[] =>
  mentions.map((mention, at) => {
    if (isOnlyPlace(words, mention)) return { ...mention, named: [] };
    if (isOfNext(words, mention, mentions[at + 1])) return { ...mention, named: [] };
    if (tellsWhich(words, mentions[at - 1], mention)) return demote(mention, 0.35);
    if (isModifier(mention, mentions[at + 1])) return demote(mention, 0.5);
    const before = mentions[at - 1];
    if (before !== undefined && isOfNext(words, before, mention)) return mention;
    return isPlace(words, before, mention) ? demote(mention, 0.35) : mention;
  });

/** All that may be meant, each component once, the surest first; what two mentions speak for is surer. */
export const mergeNamed = (mentions: readonly Mention[]): readonly Named[] => {
  const sure = new Map<Named["component"], number>();
  for (const { component, sure: more } of mentions.flatMap((mention) => mention.named)) {
    const had = sure.get(component);
    sure.set(
      component,
      had === undefined ? more : Math.max(had, more, Math.min(0.85, 1 - (1 - had) * (1 - more))),
    );
  }
  return [...sure].map(([component, value]) => ({ component, sure: value })).sort((a, b) => b.sure - a.sure);
};
