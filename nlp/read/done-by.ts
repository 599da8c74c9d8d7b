import people from "../lexicon/data/people.json" with { type: "json" };
import type { Clause } from "./clauses.ts";
import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import type { Event } from "./told.ts";
import { wordsOf } from "./where.ts";

const WHO: ReadonlySet<string> = new Set(people.who.flatMap((who) => who.split(" ").slice(-1)));
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

type Person = Stretch;

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
    const person = personEndingAt(scan, at);
    if (person === undefined) continue;
    if (!ASIDE.has(wordAt(scan, person.from - 1)) && !BESIDES.has(wordAt(scan, person.to))) return person;
    at = person.from;
  }
  return undefined;
};

/** "By the dealer", "my cousin fitted it": told behind the work. */
const toldBehind = (scan: Scan, deed: number, to: number): Person | undefined => {
  for (let at = deed + 1; at < Math.min(to + REACH.behind, scan.tokens.length); at++) {
    const person = personEndingAt(scan, at);
    if (person === undefined) continue;
    if (wordAt(scan, person.from - 1) === "by") return person;
    for (let verb = at + 1; verb <= at + LONGEST; verb++)
      if (DID.has(wordAt(scan, verb)) && STANDING_FOR.has(wordAt(scan, verb + 1))) return person;
  }
  return undefined;
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
    if (person !== undefined) return wordsOf(scan, person).toLowerCase();
  }
  return null;
};
