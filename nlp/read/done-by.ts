import { capital } from "../../shared/capital.ts";
import people from "../lexicon/data/people.json" with { type: "json" };
import { isGivenName, SPELLER } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import { WHO } from "./somebody.ts";
import type { Event } from "./told.ts";
import { wordsOf } from "./where.ts";
import { DETERMINERS } from "./words.ts";

const UNMISTAKABLE: ReadonlySet<string> = new Set(people.unmistakable);
const TRADES: ReadonlySet<string> = new Set(people.trades);
const OWNERS: ReadonlySet<string> = new Set(people.owners);
const BESIDES: ReadonlySet<string> = new Set(people.besides);
const DID: ReadonlySet<string> = new Set(people.verbs);

const SPEAKER: ReadonlySet<string> = new Set(
  "i we ive weve id wed im ill well myself ourselves us".split(" "),
);
const SOMEBODY: ReadonlySet<string> = new Set(
  "he she they hes shes theyve theyd himself herself themselves".split(" "),
);
/** "For my brother", "with the neighbour": not the one who does it. */
const ASIDE: ReadonlySet<string> = new Set(
  "for to with from at of like than about beside near behind off past without".split(" "),
);
const STANDING_FOR: ReadonlySet<string> = new Set("it that this them those the all both".split(" "));

/** As far before the word of a deed as its subject may stand, and as far behind as its doer may be told. */
const REACH = { before: 16, behind: 14 } as const;
/** Words between "the" and the one: "the nice young tyre man". */
const LONGEST = 3;

/** A person; `called` where the last word is a name. */
type Person = Stretch & { readonly called?: true };

/** Said to somebody, and not of him: "hi dave, replaced the pump". */
const GREETINGS: ReadonlySet<string> = new Set(people.greetings);
/** What may stand between a name and what he did: "trev finally fixed it". */
const BETWEEN: ReadonlySet<string> = new Set(people.between);
/** What befalls a rig that has a name: "gertie got new tires". */
const BEFALLS: ReadonlySet<string> = new Set(people.befalls);

const isFree = ({ components, materials, times }: Scan, at: number): boolean =>
  ![components, materials, times].some((refs) => refs.some(({ from, to }) => from <= at && at < to));

/** A word that nobody knows, right before what was done: "davo hooked up a new controller". */
const mayBeName = (scan: Scan, at: number, deed: number): boolean => {
  const token = scan.tokens[at];
  if (token?.kind !== "word" || token.norm.length < 3 || /\d/.test(token.norm)) return false;
  if (SPELLER.knows(token.norm) || DETERMINERS.has(wordAt(scan, at - 1))) return false;
  if (SPEAKER.has(wordAt(scan, at - 1))) return false;
  const adverb = deed === at + 2 && BETWEEN.has(wordAt(scan, at + 1));
  return (deed === at + 1 || adverb) && isFree(scan, at) && !/(?:ed|ing|ly|s)$/.test(token.norm);
};

/** "In Normanton" is where. */
const PLACES_AT: ReadonlySet<string> = new Set(people.beforeTowns);

/** A person called by name, who does what is told of at `deed`. */
const namedAt = (scan: Scan, at: number, deed: number): Person | undefined => {
  const word = wordAt(scan, at);
  const isName = (isGivenName(word) && isFree(scan, at)) || mayBeName(scan, at, deed);
  const before = wordAt(scan, at - 1);
  const addressed = scan.tokens[at + 1]?.norm === "," || GREETINGS.has(before) || PLACES_AT.has(before);
  return !isName || addressed || BEFALLS.has(wordAt(scan, deed))
    ? undefined
    : { from: at, to: at + 1, called: true };
};

/** "My cousin Trev": the name belongs to whom it stands behind. */
const withTitle = (scan: Scan, person: Person): Person => {
  const title = personEndingAt(scan, person.from - 1);
  return title === undefined ? person : { ...person, from: title.from };
};

/** A person that ends with this word: "my son in law", "the mobile tyre man", "dealer". */
const personEndingAt = (scan: Scan, at: number): Person | undefined => {
  const head = wordAt(scan, at);
  if (!WHO.has(head) && !UNMISTAKABLE.has(head)) return undefined;
  for (let from = at - 1; from >= at - 1 - LONGEST && from >= 0; from--) {
    const word = wordAt(scan, from);
    if (scan.tokens[from]?.kind === "mark" || SPEAKER.has(word)) break;
    if (OWNERS.has(word)) return { from, to: at + 1 };
  }
  if (!UNMISTAKABLE.has(head))
    return TRADES.has(wordAt(scan, at - 1)) ? { from: at - 1, to: at + 1 } : undefined;
  return { from: TRADES.has(wordAt(scan, at - 1)) ? at - 1 : at, to: at + 1 };
};

/** The first word of the sentence, or of what was announced anew, in which a word stands. */
const sentenceStart = (scan: Scan, clauses: readonly Clause[], at: number): number => {
  const hard = clauses.findLast((clause) => clause.from <= at && clause.hard)?.from ?? 0;
  for (let mark = at - 1; mark >= hard; mark--) if (/^[.!?;]$/u.test(wordAt(scan, mark))) return mark + 1;
  return hard;
};

type Subject = Person | "speaker" | undefined;

/** Whom "he" or "they" stands for: the person told of last, else the word itself. */
const standsFor = (scan: Scan, at: number): Subject => {
  for (let back = at - 1; back >= 0 && back > at - 3 * REACH.before; back--) {
    const person = personEndingAt(scan, back);
    if (person !== undefined) return person;
  }
  return /^(?:they|theyve|theyd|themselves)$/u.test(wordAt(scan, at)) ? undefined : { from: at, to: at + 1 };
};

/** Whoever is told of last before a deed, in its own sentence, as the one who acts. */
const subjectOf = (scan: Scan, clauses: readonly Clause[], deed: number): Subject => {
  const floor = Math.max(sentenceStart(scan, clauses, deed), deed - REACH.before);
  for (let at = deed - 1; at >= floor; at--) {
    const word = wordAt(scan, at);
    if (SPEAKER.has(word)) return "speaker";
    if (SOMEBODY.has(word)) return standsFor(scan, at);
    const called = namedAt(scan, at, deed);
    const person = called === undefined ? personEndingAt(scan, at) : withTitle(scan, called);
    if (person === undefined) continue;
    if (!ASIDE.has(wordAt(scan, person.from - 1)) && !BESIDES.has(wordAt(scan, person.to))) return person;
    at = person.from;
  }
  return undefined;
};

const givenAt = (scan: Scan, at: number): Person | undefined =>
  isGivenName(wordAt(scan, at)) && isFree(scan, at) ? { from: at, to: at + 1, called: true } : undefined;

/** "By the dealer", "my cousin fitted it": told behind the work. */
const toldBehind = (scan: Scan, deed: number, to: number): Person | undefined => {
  for (let at = deed + 1; at < Math.min(to + REACH.behind, scan.tokens.length); at++) {
    const person = personEndingAt(scan, at) ?? givenAt(scan, at);
    if (person === undefined) continue;
    if (wordAt(scan, person.from - 1) === "by") return person;
    for (let verb = at + 1; verb <= at + LONGEST; verb++)
      if (DID.has(wordAt(scan, verb)) && STANDING_FOR.has(wordAt(scan, verb + 1))) return person;
  }
  return undefined;
};

/** "my cousin Trev": in lower case, but for the name. */
const saidOf = (scan: Scan, person: Person): string => {
  const words = wordsOf(scan, person).toLowerCase();
  return person.called === true ? words.replace(/\S+$/, capital) : words;
};

/** Who did the work when the note names someone other than its speaker: "the shop", "my son in law". */
export const doneBy = (
  event: Pick<Event, "deeds" | "from" | "to">,
  scan: Scan,
  clauses: readonly Clause[],
): string | null => {
  for (const { at } of event.deeds) {
    const subject = subjectOf(scan, clauses, at);
    const person = subject === undefined || subject === "speaker" ? toldBehind(scan, at, event.to) : subject;
    if (person !== undefined) return saidOf(scan, person);
  }
  return null;
};
