import type { Named } from "../../shared/memory/query.ts";
import { plainWords } from "../../shared/memory/words.ts";
import type { ComponentId, SystemId } from "../../shared/vocabulary.ts";
import lexicon from "../lexicon/data/components.json" with { type: "json" };
import nicknames from "./nicknames.json" with { type: "json" };

/** What one phrase may mean. */
export type Senses = { readonly named: readonly Named[]; readonly systems: readonly SystemId[] };

/** Words `from` to `to` (exclusive) of a text that name something. */
export type Mention = Senses & { readonly from: number; readonly to: number };

const SURE = { name: 1, nick: 0.8, weak: 0.65, group: 0.6, claim: 0.35 } as const;
const LONGEST = 6;

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

  find(key: string): Senses | undefined {
    const named = this.named.get(key);
    const system = this.systems.get(key);
    if (named === undefined && system === undefined) return undefined;
    const best = Math.max(0, ...(named?.values() ?? []));
    const least = best >= SURE.name ? SURE.weak : 0;
    return {
      named: [...(named ?? [])].flatMap(([component, sure]) => (sure >= least ? [{ component, sure }] : [])),
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

const PHRASES = new Phrases();
addLexicon(PHRASES);
addNicknames(PHRASES);

const longestAt = (words: readonly string[], from: number): Mention | undefined => {
  for (let length = Math.min(LONGEST, words.length - from); length > 0; length--) {
    const senses = PHRASES.find(words.slice(from, from + length).join(" "));
    if (senses !== undefined) return { ...senses, from, to: from + length };
  }
  return undefined;
};

/** The things named in a text of plain words, left to right, the longest name at each place, none overlapping. */
export const mentionsIn = (words: readonly string[]): readonly Mention[] => {
  const found: Mention[] = [];
  for (let at = 0; at < words.length; at++) {
    const mention = longestAt(words, at);
    if (mention === undefined) continue;
    found.push(mention);
    at = mention.to - 1;
  }
  return found;
};

const SAYINGS: ReadonlySet<string> = new Set(nicknames.sayings.map((each) => plainWords(each).join(" ")));

/** Where turns of phrase stand that name nothing. */
export const sayingsIn = (words: readonly string[]): readonly Pick<Mention, "from" | "to">[] =>
  mentionsIn(words).filter(({ from, to }) => SAYINGS.has(words.slice(from, to).join(" ")));
