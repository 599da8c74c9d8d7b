import type { Action } from "../../shared/vocabulary.ts";
import { plainTag, TOOLS } from "../lexicon/lexicon.ts";
import type { Deed } from "./deed.ts";
import { wordAt } from "./ground.ts";
import { headOf, isIndefinite, isWorn, type Phrase, phraseAt } from "./phrases.ts";
import { standsFor } from "./replaced.ts";
import type { Scan, Stretch } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { isWhole } from "./wholes.ts";
import { startingIn, touching } from "./windows.ts";
import { AUXILIARIES, DETERMINERS, listed, SUBJECTS } from "./words.ts";

/** Actions for which any thing may be what it was done with: "shimmed it with a beer mat". */
const WITH_ANYTHING: ReadonlySet<Action> = new Set([
  "patch",
  "seal",
  "refasten",
  "reinforce",
  "rebuild",
  "install",
  "repair",
  "replace",
  "weld",
  "rewire",
]);
/** Adjusting with a thing that stays in, not with a tool. */
const FILLS = /^(?:shim|pack|wedge|prop|space|chock|level|pad)~/;
const MEANS = listed("objectsMeans");
const MADE_OF = new Set(["of", "from"]);
const PLACING = listed("objectsPlacing");
const NOT_THINGS = listed("objectsNotThings");
/** "Wrapped it in a sheepskin". */
const COVERS = /^(?:re)?(?:wrap|swath|swaddl|sheath|coat|encas|drown|soak|bed|smother|dunk)/;
const JOINS = new Set(["and", "plus", ","]);
const REACH = 16;

/** Nothing is said of it that would make it a subject: "and the light works". */
const endsThere = (phrase: Phrase, scan: Scan): boolean =>
  !/^(?:PastTense|PresentTense|Copula|Modal|Auxiliary)$/.test(plainTag(wordAt(scan, phrase.to))) &&
  !AUXILIARIES.has(wordAt(scan, phrase.to));

const takesAnything = (event: Event): boolean =>
  WITH_ANYTHING.has(event.action) ||
  (event.action === "adjust" && event.deeds.some((deed) => FILLS.test(deed.source)));

/** Whether a phrase may name something put in: a noun, no tool, no person or time, not the thing itself. */
const mayGoIn = (phrase: Phrase, told: Told, scan: Scan): boolean => {
  const head = headOf(phrase.name);
  return (
    !phrase.pronoun &&
    phrase.name !== "" &&
    !NOT_THINGS.has(head) &&
    !NOT_THINGS.has(wordAt(scan, phrase.from)) &&
    !(phrase.ref === null && (TOOLS.has(head) || TOOLS.has(phrase.name))) &&
    !(
      phrase.ref === null && /^(?:Adjective|Adverb|Gerund|PastTense|FirstName|Month)$/.test(plainTag(head))
    ) &&
    !isWhole(told.topic.component, phrase.name) &&
    !isWorn(scan, phrase) &&
    !(phrase.ref !== null && !startingIn(told.materials, phrase.ref.from, phrase.to).includes(phrase.ref)) &&
    !touching(told.faults, phrase.start, phrase.to).some(
      (fault) => fault.from < phrase.to && phrase.start < fault.to,
    )
  );
};

/** A phrase, and then its place or the end: "a hasp and padlock on it". */
const closes = (phrase: Phrase, scan: Scan): boolean => {
  const next = scan.tokens[phrase.to];
  return (
    phrase.to - phrase.from <= 2 && (next === undefined || next.kind === "mark" || PLACING.has(next.norm))
  );
};

type Joined = Stretch & { readonly name: string };

/** "A strip of crate and two bolts": what is joined to a phrase on its right. */
export const andMore = <T extends Joined>(
  first: T,
  until: number,
  scan: Scan,
  verbs: ReadonlySet<number>,
): (T | Phrase)[] => {
  const found: (T | Phrase)[] = [first];
  for (let last: T | Phrase = first; ; ) {
    let at: number = last.to;
    while (JOINS.has(wordAt(scan, at))) at++;
    const listed = wordAt(scan, at - 1) === ",";
    const next: Phrase | undefined = at > last.to ? phraseAt(scan, at, verbs) : undefined;
    if (next === undefined || next.to > until || next.pronoun) return found;
    if (!(next.ref !== null && isIndefinite(scan, next)) && !endsThere(next, scan)) return found;
    if (listed && next.ref === null && next.start === next.from) return found;
    const plain = next.ref === null && !isIndefinite(scan, next);
    if (plain && !("start" in last && isIndefinite(scan, last) && closes(next, scan))) return found;
    found.push(next);
    last = next;
  }
};

/** "with a cattle tag", "out of a mineral tub": by what means. */
const byMeans = (deed: Deed, until: number, told: Told, scan: Scan, verbs: ReadonlySet<number>): Phrase[] => {
  const found: Phrase[] = [];
  for (let at = deed.at + 1; at < Math.min(deed.at + REACH, until); at++) {
    if (startingIn(told.verdicts, deed.at + 1, at + 1).length > 0) break;
    const means =
      MEANS.has(wordAt(scan, at)) ||
      (MADE_OF.has(wordAt(scan, at)) && wordAt(scan, at - 1) === "out") ||
      (wordAt(scan, at) === "in" && COVERS.test(wordAt(scan, deed.at)));
    if (means && wordAt(scan, at - 1) === "even") break;
    const phrase = means ? phraseAt(scan, at + 1, verbs) : undefined;
    if (phrase !== undefined && phrase.to <= until) found.push(...andMore(phrase, until, scan, verbs));
  }
  return found;
};

const MEASURES = listed("objectsMeasures");
const FAR = 25;

/** "Two layers of mat", "one tube of mastic": stuff told by how much of it. */
const measured = (deed: Deed, until: number, scan: Scan, verbs: ReadonlySet<number>): Phrase[] => {
  const found: Phrase[] = [];
  for (let at = deed.at + 1; at < Math.min(deed.at + FAR, until); at++) {
    if (wordAt(scan, at) !== "of" || !MEASURES.has(wordAt(scan, at - 1))) continue;
    const phrase = phraseAt(scan, at + 1, verbs);
    if (phrase !== undefined && phrase.to <= until) found.push(...andMore(phrase, until, scan, verbs));
  }
  return found;
};

const HAVING = new Set(["had", "got", "have", "get", "having", "getting"]);
const PUTS: ReadonlySet<string> = new Set(["fit", "apply"]);
const FASTENS: ReadonlySet<Action> = new Set([
  "weld",
  "rewire",
  "rebuild",
  "reinforce",
  "refasten",
  "install",
]);

const pastParticles = (scan: Scan, at: number): number => {
  let start = at;
  while (["in", "on", "up", "out", "down"].includes(wordAt(scan, start))) start++;
  return start;
};

/** "bolted a piece of drill stem under it": the object of a deed that puts something somewhere. */
const asObject = (deed: Deed, until: number, scan: Scan, verbs: ReadonlySet<number>): Phrase[] => {
  const puts = PUTS.has(deed.sense) || (deed.sense === "new" && deed.at !== deed.from);
  const fastens = deed.sense === "fasten" || FASTENS.has(deed.action ?? "inspect");
  if (!puts && !fastens) return [];
  const start = pastParticles(scan, deed.at + 1);
  const phrase = phraseAt(scan, start, verbs);
  if (phrase === undefined || phrase.to > until || !isIndefinite(scan, phrase)) return [];
  const placed = start > deed.at + 1 || PLACING.has(wordAt(scan, phrase.to));
  const back = wordAt(scan, phrase.to) === "back" || wordAt(scan, phrase.to + 1) === "back";
  return placed && !back ? andMore(phrase, until, scan, verbs) : [];
};

/** "Had a bracket welded on": the object of what was had done. */
const hadDone = (deed: Deed, scan: Scan, verbs: ReadonlySet<number>): Phrase[] => {
  const next = wordAt(scan, deed.at + 1);
  if (SUBJECTS.has(next) || DETERMINERS.has(next) || next === "them") return [];
  for (let at = deed.at - 1; at > deed.at - 7; at--) {
    if (!HAVING.has(wordAt(scan, at - 1))) continue;
    const phrase = phraseAt(scan, at, verbs);
    return phrase !== undefined && phrase.to === deed.at && isIndefinite(scan, phrase) ? [phrase] : [];
  }
  return [];
};

/** "New stainless ones": the thing that was named before. */
const named = (phrase: Phrase, told: Told, scan: Scan): Phrase =>
  phrase.pronoun && phrase.name !== ""
    ? { ...phrase, name: standsFor(phrase, told, scan)?.name ?? phrase.name, pronoun: false }
    : phrase;

/** Things that went in by how they are spoken of, whether or not the lexicon knows them. */
export const objectsOf = (event: Event, told: Told, scan: Scan, verbs: ReadonlySet<number>): Phrase[] => {
  const anything = takesAnything(event);
  return event.deeds
    .filter((deed) => deed.sense !== "look" && deed.sense !== "prep")
    .flatMap((deed) => [
      ...(anything ? byMeans(deed, event.to, told, scan, verbs) : []),
      ...(anything ? asObject(deed, event.to, scan, verbs) : []),
      ...(anything ? measured(deed, event.to, scan, verbs) : []),
      ...(anything && deed.action !== "replace" ? hadDone(deed, scan, verbs) : []),
    ])
    .map((phrase) => named(phrase, told, scan))
    .filter((phrase) => mayGoIn(phrase, told, scan));
};
