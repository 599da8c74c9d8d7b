import { plainWords } from "../../shared/memory/words.ts";
import type { Moment } from "../../shared/reading.ts";
import { type Action, type ComponentId, componentName } from "../../shared/vocabulary.ts";
import { deedNamed } from "../ask/deeds.ts";
import { weighMentions } from "../ask/heads.ts";
import { type Mention, mentionsIn } from "../ask/names.ts";
import { SURE_NAME } from "../ask/surely-named.ts";
import { read } from "../read/index.ts";
import { scan } from "../read/scan.ts";

/** A thing that is known to the listener, with the words that were told of it; the likeliest to be meant first. */
export type Known = {
  readonly component: ComponentId;
  readonly words: string;
  readonly materials: readonly string[];
  readonly action: Action | null;
};

const MOST_WORDS = 40;

const bestOf = ({ named }: Mention): number => Math.max(0, ...named.map(({ sure }) => sure));

const saysIt = (words: readonly string[], phrase: readonly string[]): boolean =>
  ` ${words.join(" ")} `.includes(` ${phrase.join(" ")} `);

/** "Tread" after "the step tread" is the step's: the word was told as the end of a longer name. */
const calledSo = ({ component, words }: Known, phrase: readonly string[]): boolean => {
  const told = plainWords(words);
  return mentionsIn(told).some(
    ({ from, to, named }) =>
      to - from > phrase.length &&
      told.slice(to - phrase.length, to).join(" ") === phrase.join(" ") &&
      named.some((each) => each.component === component && each.sure >= 0.65),
  );
};

/** The known thing that has such a part: one of which the word was told before, else one that may have it. */
const ownerOf = (
  mention: Mention,
  phrase: readonly string[],
  known: readonly Known[],
): ComponentId | undefined => {
  if (bestOf(mention) >= SURE_NAME) return known.find((each) => calledSo(each, phrase))?.component;
  const sureOf = (each: Known): number =>
    mention.named.find(({ component }) => component === each.component)?.sure ?? 0;
  const mayHave = known.filter((each) => sureOf(each) > 0);
  const told = mayHave.find((each) => saysIt(plainWords(each.words), phrase));
  const likely = mayHave.find((each) => bestOf(mention) - sureOf(each) <= MUCH_LESS);
  return (told ?? likely)?.component;
};

/** A "door" is rather that of the entry than that of a water heater of which no door was told. */
const MUCH_LESS = 0.2;

/** Trouble may come to anything: "the leak" is no part. */
const TROUBLE: ReadonlySet<string> = new Set(
  "leak drip crack hole tear rip gap split damp smell noise rattle squeak draft draught bubble stain rust mold water".split(
    " ",
  ),
);

const patternOf = (phrase: readonly string[]): RegExp =>
  new RegExp(`\\b${phrase.join("\\W+")}(?:s|es|'s)?\\b`, "i");

const readsAs = (text: string, component: ComponentId, moment: Moment): boolean => {
  const { records } = read(text, moment);
  return records.length > 0 && records.every(({ fields }) => fields.component === component);
};

const stuffSaid = (words: readonly string[], materials: readonly string[]): readonly string[] | undefined =>
  materials
    .flatMap((material) => [plainWords(material), plainWords(material).slice(-1)])
    .find((phrase) => phrase.length > 0 && saysIt(words, phrase));

/** The things named, but for words that stand for stuff that is known to have gone in: the "cord" of "butyl cord". */
const thingsIn = (words: readonly string[], known: readonly Known[]): readonly Mention[] => {
  const stuff = known.flatMap(({ materials }) => stuffSaid(words, materials) ?? []).join(" ");
  return weighMentions(words, mentionsIn(words)).filter(
    ({ from, to }) => to - from > 1 || !saysIt(stuff.split(" "), words.slice(from, to)),
  );
};

/** Words for something, and the known thing that they belong to. */
type Owned = { readonly phrase: readonly string[]; readonly owner: ComponentId };

const partsOwned = (words: readonly string[], known: readonly Known[]): readonly Owned[] => {
  const all = thingsIn(words, known).filter(({ named }) => named.length > 0);
  const sure = all.filter((mention) => bestOf(mention) >= SURE_NAME);
  return (sure.length > 0 ? sure : all).flatMap((mention) => {
    const phrase = words.slice(mention.from, mention.to);
    const owner = TROUBLE.has(phrase.join(" ")) ? undefined : ownerOf(mention, phrase, known);
    return owner === undefined ? [] : [{ phrase, owner }];
  });
};

/** "Picked up the lap sealant": got, and not put in yet. */
const GETS =
  /^(?:(?:i|we|ive|weve) )?(?:(?:just|finally|also) )*(?:picked up|bought|ordered|grabbed|got hold of) /;

/** "That weld", "the butyl": work by what was done or put in. */
const workOwned = (words: readonly string[], known: readonly Known[]): readonly Owned[] => {
  if (GETS.test(words.join(" "))) return [];
  if (thingsIn(words, known).some((mention) => bestOf(mention) >= SURE_NAME)) return [];
  return known.flatMap(({ component, materials, action }) => {
    const stuff = stuffSaid(words, materials);
    const work = words.find((word, at) => POINTS.has(words[at - 1] ?? "") && deedNamed(word) === action);
    const phrase = stuff ?? (work === undefined || action === null ? undefined : [work]);
    return phrase === undefined ? [] : [{ phrase, owner: component }];
  });
};

const POINTS: ReadonlySet<string> = new Set(["that", "the", "my", "our", "this"]);

/** What a text tells of by a part, by its stuff or by the work, the likeliest first. */
const owned = (text: string, known: readonly Known[]): readonly Owned[] => {
  const words = plainWords(text);
  if (words.length > MOST_WORDS || known.length === 0) return [];
  return [...partsOwned(words, known), ...workOwned(words, known)];
};

/** The text with a thing called by its plain name: "that jack leg" for the stabilizer. Null where it isn't surely named. */
export const spelledPlainly = (text: string, component: ComponentId): string | null => {
  const words = plainWords(text);
  const mention = weighMentions(words, mentionsIn(words)).find(({ named }) =>
    named.some((each) => each.component === component && each.sure >= SURE_NAME),
  );
  if (mention === undefined) return null;
  return text.replace(patternOf(words.slice(mention.from, mention.to)), componentName(component));
};

/** The known things that a text may tell of without naming them, the likeliest first. */
export const ownersIn = (text: string, known: readonly Known[]): readonly ComponentId[] =>
  owned(text, known).map(({ owner }) => owner);

/** "Entry step bolt" for a bolt and for a step bolt. */
const before = (name: string, [first = ""]: readonly string[]): string =>
  name.endsWith(` ${first}`) ? `${name.slice(0, -first.length)}$&` : `${name} $&`;

/** "Urethane sealant" for the "sealant" in it. */
const wholeStuff = (text: string, phrase: readonly string[], moment: Moment): readonly string[] => {
  const at = patternOf(phrase).exec(text)?.index ?? -1;
  const { tokens, materials } = scan(text, moment);
  const spans = materials.map(({ from, to }) => ({
    start: tokens[from]?.start ?? 0,
    end: tokens[to - 1]?.end ?? 0,
  }));
  const span = spans.find(({ start, end }) => start < at && at < end);
  return span === undefined ? phrase : plainWords(text.slice(span.start, span.end));
};

/**
 * The text with the thing named whose part or work it tells of: "new igniter" after talk of the furnace is the furnace's.
 * Null where nothing that is known has such a part.
 */
export const spelledInContext = (text: string, known: readonly Known[], moment: Moment): string | null => {
  for (const { phrase: said, owner } of owned(text, known)) {
    const name = componentName(owner);
    const phrase = wholeStuff(text, said, moment);
    const spelled = [before(name, phrase), name].map((words) => text.replace(patternOf(phrase), words));
    const found = spelled.find((each) => each !== text && readsAs(each, owner, moment));
    if (found !== undefined) return found;
  }
  return null;
};
