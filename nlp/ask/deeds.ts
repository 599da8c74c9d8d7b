import { plainWords } from "../../shared/memory/words.ts";
import type { Action, ComponentId } from "../../shared/vocabulary.ts";
import { inflect } from "../lexicon/inflect.ts";
import table from "./deeds.json" with { type: "json" };
import { PhraseBook } from "./phrase-book.ts";

export type Deed = {
  readonly from: number;
  readonly to: number;
  readonly actions: readonly Action[];
  readonly components: readonly ComponentId[];
};

type Sense = Pick<Deed, "actions" | "components">;

const NOUNS: ReadonlySet<string> = new Set(table.nouns);
const SUBJECTS: ReadonlySet<string> = new Set(
  "i we to ever you he she they should must not last never and".split(" "),
);

const formsOf = (verb: string): readonly string[] => {
  const [base = "", ...particle] = verb.split(" ");
  return [...new Set(inflect(base).map(({ text }) => [text, ...particle].join(" ")))];
};

const keyOf = (phrase: string): string => plainWords(phrase).join(" ");

const byForm = (): ReadonlyMap<string, Sense> => {
  const forms = new Map<string, Sense>();
  for (const { verbs, actions } of table.deeds as { verbs: string[]; actions: Action[] }[]) {
    for (const form of verbs.flatMap(formsOf)) {
      if (!forms.has(keyOf(form))) forms.set(keyOf(form), { actions, components: [] });
    }
  }
  for (const { say, ...sense } of table.phrases as (Sense & { say: string[] })[]) {
    for (const phrase of say) forms.set(keyOf(phrase), sense);
  }
  return forms;
};

const FORMS = byForm();
const BOOK = new PhraseBook(FORMS);

/** "All I did was clean it" */
const isWhatWasDone = (words: readonly string[], from: number): boolean =>
  words[from - 2] === "did" && (words[from - 1] === "was" || words[from - 1] === "is");

const isThing = (words: readonly string[], from: number, key: string): boolean =>
  NOUNS.has(key) && !SUBJECTS.has(words[from - 1] ?? "") && !isWhatWasDone(words, from);

/** The work asked about, left to right. */
export const deedsIn = (words: readonly string[]): readonly Deed[] =>
  BOOK.all(words, (key, from) => !isThing(words, from, key)).map(({ sense, from, to }) => ({
    ...sense,
    from,
    to,
  }));

/** The action that a word or two name by themselves, be it as a noun: "seal", "replacement work". */
export const deedNamed = (text: string): Action | undefined =>
  plainWords(text)
    .map((word) => FORMS.get(word)?.actions[0])
    .find((action) => action !== undefined);
