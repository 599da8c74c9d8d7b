import type { Named } from "../../shared/memory/query.ts";
import { plainWords } from "../../shared/memory/words.ts";
import type { ComponentId, SystemId } from "../../shared/vocabulary.ts";
import lexicon from "../lexicon/data/components.json" with { type: "json" };
import nicknames from "./nicknames.json" with { type: "json" };
import { PhraseBook } from "./phrase-book.ts";

/** What one phrase may mean. */
export type Senses = { readonly named: readonly Named[]; readonly systems: readonly SystemId[] };

/** Words `from` to `to` (exclusive) of a text that name something. */
export type Mention = Senses & { readonly from: number; readonly to: number };

const SURE = { name: 1, nick: 0.8, weak: 0.65, group: 0.6, claim: 0.35 } as const;

class Phrases {
  private readonly named = new Map<string, Map<ComponentId, number>>();
  private readonly systems = new Map<string, SystemId>();

  name(phrase: string, component: ComponentId, sure: number): void {
    const key = plainWords(phrase).join(" ");
    const senses = this.named.get(key) ?? new Map<ComponentId, number>();
    this.named.set(key, senses.set(component, Math.max(sure, senses.get(component) ?? 0)));
  }

  /** A place, or a saying, and no thing: takes its words away from shorter names. */
  room(phrase: string): void {
    const key = plainWords(phrase).join(" ");
    if (!this.named.has(key)) this.named.set(key, new Map());
  }

  system(phrase: string, system: SystemId): void {
    this.systems.set(plainWords(phrase).join(" "), system);
  }

  /** What each phrase may mean; beside a sure name, what the same words only may mean is left out. */
  senses(): ReadonlyMap<string, Senses> {
    const keys = new Set([...this.named.keys(), ...this.systems.keys()]);
    return new Map([...keys].map((key) => [key, this.sensesOf(key)]));
  }

  private sensesOf(key: string): Senses {
    const named = [...(this.named.get(key) ?? [])];
    const system = this.systems.get(key);
    const best = Math.max(0, ...named.map(([, sure]) => sure));
    const least = best >= SURE.name ? SURE.weak : 0;
    return {
      named: named.flatMap(([component, sure]) => (sure >= least ? [{ component, sure }] : [])),
      systems: system === undefined ? [] : [system],
    };
  }
}

type Entry = {
  readonly names: string[];
  readonly weak: string[];
  readonly parts: string[];
  readonly claims: string[];
};

const addLexicon = (phrases: Phrases): void => {
  for (const [id, entry] of Object.entries(lexicon) as [ComponentId, Entry][]) {
    for (const name of entry.names) phrases.name(name, id, SURE.name);
    for (const name of [...entry.weak, ...entry.parts]) phrases.name(name, id, SURE.weak);
    for (const name of entry.claims) phrases.name(name, id, SURE.claim);
  }
};

const addNicknames = (phrases: Phrases): void => {
  for (const [id, names] of Object.entries(nicknames.nick) as [ComponentId, string[]][]) {
    for (const name of names) phrases.name(name, id, SURE.nick);
  }
  for (const [words, ids] of Object.entries(nicknames.groups) as [string, ComponentId[]][]) {
    for (const word of words.split("|"))
      ids.forEach((id, at) => {
        phrases.name(word, id, SURE.group - 0.02 * at);
      });
  }
  for (const nothing of [...nicknames.rooms, ...nicknames.sayings]) phrases.room(nothing);
  for (const [id, names] of Object.entries(nicknames.systems) as [SystemId, string[]][]) {
    for (const name of names) phrases.system(name, id);
  }
};

const bookOfNames = (): PhraseBook<Senses> => {
  const phrases = new Phrases();
  addLexicon(phrases);
  addNicknames(phrases);
  return new PhraseBook(phrases.senses());
};
const NAMES = bookOfNames();

/** The things named in a text of plain words, left to right, the longest name at each place, none overlapping. */
export const mentionsIn = (words: readonly string[]): readonly Mention[] =>
  NAMES.all(words).map(({ sense, from, to }) => ({ ...sense, from, to }));

const SAYINGS: ReadonlySet<string> = new Set(nicknames.sayings.map((each) => plainWords(each).join(" ")));

/** Where turns of phrase stand that name nothing. */
export const sayingsIn = (words: readonly string[]): readonly Pick<Mention, "from" | "to">[] =>
  mentionsIn(words).filter(({ from, to }) => SAYINGS.has(words.slice(from, to).join(" ")));
