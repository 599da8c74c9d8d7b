import nlp from "compromise";
import { ACTIONS, type Action, type ComponentId, type Outcome } from "../../shared/vocabulary.ts";
import actionData from "./data/actions.json" with { type: "json" };
import commonData from "./data/common-words.json" with { type: "json" };
import componentData from "./data/components.json" with { type: "json" };
import cueData from "./data/cues.json" with { type: "json" };
import faultData from "./data/faults.json" with { type: "json" };
import materialData from "./data/materials.json" with { type: "json" };
import notComponentData from "./data/not-components.json" with { type: "json" };
import outcomeData from "./data/outcomes.json" with { type: "json" };
import peopleData from "./data/people.json" with { type: "json" };
import placeData from "./data/places.json" with { type: "json" };
import spellingData from "./data/spellings.json" with { type: "json" };
import wholeData from "./data/wholes.json" with { type: "json" };
import { inflect } from "./inflect.ts";
import { compile, type Pattern, PatternIndex } from "./pattern.ts";
import { Speller } from "./spelling.ts";

export type MaterialClass = keyof typeof materialData.heads;
export type Sense = "deed" | "fit" | "new" | "fasten" | "apply" | "prep" | "look" | "generic";
export type Cue = keyof typeof cueData.cues | "doer";
export type ComponentEntry = { readonly id: ComponentId; readonly weak: boolean; readonly words: string };
export type ActionEntry = { readonly sense: Sense; readonly action: Action | null };
export type VerdictEntry = { readonly outcome: Outcome };

const isAction = (text: string): text is Action => (ACTIONS as readonly string[]).includes(text);
const toAction = (text: string | null): Action | null => (text !== null && isAction(text) ? text : null);

/** Patterns are written as they are said; hyphens and apostrophes are gone by the time they are matched. */
const words = (phrase: string): string => phrase.replaceAll("-", " ");

const componentPatterns = Object.entries(componentData).flatMap(([id, entry]) => {
  const make =
    (weak: boolean) =>
    (name: string): Pattern<ComponentEntry> =>
      compile(words(name), { id: id as ComponentId, weak, words: name });
  return [...entry.names.map(make(false)), ...entry.parts.map(make(false)), ...entry.weak.map(make(true))];
});

const actionPatterns = actionData.senses.flatMap(({ sense, action, patterns }) =>
  patterns.map((source) => compile<ActionEntry>(source, { sense: sense as Sense, action: toAction(action) })),
);

const materialPatterns = Object.entries(materialData.heads).flatMap(([id, heads]) =>
  heads.map((head) => compile(words(head), id as MaterialClass)),
);

const doerPatterns = [
  `${peopleData.owners.join("|")} ${peopleData.who.filter((who) => !who.includes(" ")).join("|")}`,
  peopleData.unmistakable.join("|"),
].map((source) => compile<Cue>(source, "doer"));

const cuePatterns = [
  ...Object.entries(cueData.cues).flatMap(([cue, patterns]) =>
    patterns.map((source) => compile(source, cue as Cue)),
  ),
  ...doerPatterns,
];

const verdictPatterns = outcomeData.patterns.flatMap(({ outcome, patterns }) =>
  patterns.map((source) => compile(source, { outcome: outcome as Outcome | null })),
);

const faultPatterns = faultData.patterns.flatMap(({ strength, patterns }) =>
  patterns.map((source) => compile(source, strength)),
);

export const COMPONENT_INDEX = new PatternIndex(componentPatterns);
export const NOT_COMPONENT_INDEX = new PatternIndex(
  notComponentData.phrases.map((phrase) => compile(words(phrase), null)),
);
export const ACTION_INDEX = new PatternIndex(actionPatterns);
export const MATERIAL_INDEX = new PatternIndex(materialPatterns);
export const CUE_INDEX = new PatternIndex(cuePatterns, { commas: true });
export const VERDICT_INDEX = new PatternIndex(verdictPatterns, { commas: true });
export const FAULT_INDEX = new PatternIndex(faultPatterns);

export const CLAIMS: ReadonlyMap<ComponentId, ReadonlySet<string>> = new Map(
  Object.entries(componentData).map(([id, entry]) => [id as ComponentId, new Set<string>(entry.claims)]),
);
/** Weak words of these components count only while one of the listed ones is spoken of. */
export const WITHIN: ReadonlyMap<ComponentId, readonly string[]> = new Map(
  Object.entries(componentData).flatMap(([id, entry]) =>
    "within" in entry ? [[id as ComponentId, entry.within] as const] : [],
  ),
);
export const APPLIED: ReadonlyMap<MaterialClass, Action> = new Map(
  Object.entries(actionData.applied).flatMap(([id, action]) =>
    isAction(action) ? [[id as MaterialClass, action]] : [],
  ),
);
/** Things that are mostly added where there was none before. */
export const ADDITIONS: ReadonlySet<string> = new Set(actionData.additions);
export const GENERIC: ReadonlyMap<string, Action> = new Map(
  Object.entries(actionData.generic).flatMap(([id, action]) => (isAction(action) ? [[id, action]] : [])),
);
export const KEEP: ReadonlySet<string> = new Set(materialData.keep);
export const DROP: ReadonlySet<string> = new Set(materialData.drop);
/** What the whole of a component is called. */
export const WHOLES: ReadonlyMap<string, readonly string[]> = new Map(Object.entries(wholeData.heads));
export const KIND_WORDS: ReadonlySet<string> = new Set(wholeData.kinds);
/** Turns of phrase in which a material's name names none: "out of stock". */
export const MATERIAL_SAYINGS = new PatternIndex(materialData.sayings.map((saying) => compile(saying, null)));
export const TOOL_INDEX = new PatternIndex(
  materialData.tools.filter((tool) => tool.includes(" ")).map((tool) => compile(tool, null)),
);
export const TOOLS: ReadonlySet<string> = new Set(materialData.tools);
export const DIALECT: ReadonlySet<string> = new Set(spellingData.dialect);
export const PLACES = {
  always: new Set(placeData.prepositions.always),
  often: new Set(placeData.prepositions.often),
  sides: placeData.sides,
  ends: placeData.ends,
  rooms: placeData.rooms,
  things: new Set(placeData.things),
  faint: new Set<string>(placeData.faint),
  spots: new Set<string>(placeData.spots),
  notPlaces: new Set<string>(placeData.notPlaces),
};
export const PLACE_INDEX = new PatternIndex([
  ...placeData.sides.map((text) => compile(text, "side" as const)),
  ...placeData.ends.map((text) => compile(text, "end" as const)),
  ...placeData.rooms.map((text) => compile(text, "room" as const)),
]);

const patternWords = (patterns: readonly Pattern<unknown>[]): string[] =>
  patterns.flatMap(({ parts }) => parts.flatMap((part) => [...part.words, ...part.forms.keys()]));

/** Its plain English words, of which the typing does not speak. */
const english =
  (nlp.model() as { readonly one?: { readonly lexicon?: Readonly<Record<string, unknown>> } }).one?.lexicon ??
  {};
const tradeWords = new Set([
  ...patternWords([...componentPatterns, ...actionPatterns, ...materialPatterns]),
  ...KEEP,
  ...DROP,
  ...TOOLS,
  ...PLACES.rooms.flatMap((room) => room.split(" ")),
]);
const otherWords = new Set([
  ...patternWords([...cuePatterns, ...verdictPatterns, ...faultPatterns]),
  ...Object.values(spellingData.words),
  ...commonData.words,
]);

/** Verbs that are often said with "re" before them; other such forms are no guess for a slip. */
const REDONE =
  /^re(?:seal|caulk|attach|plac|fit|glu|wir|bed|pack|torqu|charg|fill|set|build|built|instal|mount|fasten|paint|greas|hang|hung|string|strung|coat|align|level|rout|connect|pair|thread|screw|rivet|weld|lub|tap|stitch|upholster|calibrat|prim|sync|boot|mov|tighten|inforc|main)/;
const isMeant = (word: string): boolean =>
  !word.startsWith("re") || !tradeWords.has(word.slice(2)) || REDONE.test(word);

/** Repairs slips of trade words; plain English is left alone. */
export const SPELLER = new Speller(
  tradeWords,
  (word) => otherWords.has(word) || Object.hasOwn(english, word),
  isMeant,
);

/** What plain English takes a word for ("Singular", "PastTense", "Adverb" …), or "undefined". */
export const plainTag = (word: string): string => String(english[word]);
const GIVEN = /^(?:FirstName|MaleName|FemaleName)$/;
/** Whether plain English knows a word as a person's name, and the trade for nothing else: "craig", but no "jack". */
export const isGivenName = (word: string): boolean => GIVEN.test(plainTag(word)) && !tradeWords.has(word);
/** Whether plain English knows a word as a verb in some form. */
export const isPlainVerb = (word: string): boolean =>
  /^(?:Infinitive|PastTense|PresentTense|Gerund|Participle|Verb|Copula|Modal|Auxiliary)$/.test(
    String(english[word]),
  );
/** Whether plain English knows a word as the past of a verb. */
export const isPastForm = (word: string): boolean => String(english[word]) === "PastTense";
export const NOT_ACT_INDEX = new PatternIndex(actionData.notActs.map((phrase) => compile(phrase, null)));
/** Verbs that name what they put on, by every form: "duct taped". */
export const VERB_MATERIALS: ReadonlyMap<string, string> = new Map(
  Object.entries(materialData.verbs).flatMap(([verb, material]) => {
    const before = verb.split(" ").slice(0, -1);
    return inflect(verb.split(" ").at(-1) ?? verb).flatMap(({ text }) => [
      [[...before, text].join(" "), material] as const,
      [[...before, `re${text}`].join(" "), material] as const,
    ]);
  }),
);
export const ALIAS: ReadonlyMap<string, string> = new Map(Object.entries(materialData.alias));
