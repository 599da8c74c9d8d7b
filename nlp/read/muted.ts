import type { Cue } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import { droppedIn } from "./dropped.ts";
import type { Scan } from "./scan.ts";
import { ofTheirRig } from "./their-rig.ts";
import { ofTowCar } from "./tow-car.ts";
import { startingIn } from "./windows.ts";
import { listed, NEGATIVES, SUBJECTS } from "./words.ts";

/** How a word is told: as ours, as what tells of nothing done, or as what never gives a record: of others' rigs, weighed and let be. */
const [MUTED, LEFT_OUT] = [1, 2] as const;

export const isMuted = (muted: Uint8Array, at: number): boolean => (muted[at] ?? 0) >= MUTED;
/** Whether a word stands in a tale of what others did to a rig of theirs, or of what was weighed and let be. */
export const isLeftOut = (muted: Uint8Array, at: number): boolean => muted[at] === LEFT_OUT;

const SENTENCE_END = new Set([".", "!", "?", ";", "\n"]);

const sentenceFrom = (scan: Scan, at: number): number => {
  let from = at;
  while (from > 0 && !SENTENCE_END.has(scan.tokens[from - 1]?.norm ?? "")) from--;
  return from;
};

const cueIn = (scan: Scan, clause: Clause, wanted: readonly Cue[]): boolean =>
  startingIn(scan.cues, clause.from, clause.to).some(
    (cue) =>
      wanted.includes(cue.value) &&
      cue.from >= clause.from &&
      cue.to <= clause.to &&
      !["like", "as"].includes(scan.tokens[cue.from - 1]?.norm ?? "") &&
      !["like", "as"].includes(scan.tokens[cue.from - 2]?.norm ?? ""),
  );

/** A question's cue stands at the head of its clause, or says that the answer is not known. */
const asks = (scan: Scan, clause: Clause): boolean =>
  startingIn(scan.cues, clause.from, clause.to).some(
    (cue) =>
      cue.value === "question" &&
      cue.from >= clause.from &&
      cue.from < clause.to &&
      (cue.from <= clause.from + 2 || UNKNOWN.has(cue.source)),
  );
const UNKNOWN = listed("mutedUnknown");

const OWN = listed("mutedOwn");
const THEIRS = new Set(["his", "her", "their", "hers", "theirs"]);
/** "In their kitchen" */
const THERE = new Set(["in", "on", "of", "under", "off"]);
const TELLS = listed("mutedTells");
/** As far as a tale of others is looked for, and as it goes on. */
const NEAR = 14;
const LONG_TALE = 45;
const SOME_WORDS = 8;

/** "I", "our": the speaker's own again, but for "he tells me". */
const isOwn = (scan: Scan, at: number): boolean =>
  OWN.has(scan.tokens[at]?.norm ?? "") && !TELLS.has(scan.tokens[at - 1]?.norm ?? "");

const endsTale = (scan: Scan, at: number): boolean =>
  isOwn(scan, at) || SENTENCE_END.has(scan.tokens[at]?.norm ?? "");

const firstFrom = (from: number, until: number, is: (at: number) => boolean): number => {
  let at = from;
  while (at < until && !is(at)) at++;
  return at;
};

/** Where what is joined on with the speaker's own begins: "and did | ours". */
const joinedBefore = (scan: Scan, own: number): number =>
  [own - 1, own - 2, own - 3].find((at) => JOINS.has(scan.tokens[at]?.norm ?? "")) ?? own;
const JOINS = new Set(["and", "so", "then", "but"]);

/** "My brother fixed the furnace, his own heater is dead": a thing named as one that is known. */
const namesOurs = (scan: Scan, from: number, to: number): boolean =>
  startingIn(scan.components, from, to).some(
    ({ from: at, to: end }) =>
      KNOWN.has(scan.tokens[at - 1]?.norm ?? "") &&
      !(end === to - 1 && THERE.has(scan.tokens[end]?.norm ?? "")),
  );
const KNOWN = new Set(["the", "our", "that", "this"]);

/** "The bloke opposite put a new fan in his range hood and took it out again": all of it is told of another's rig. */
const muteOthers = (scan: Scan, muted: Uint8Array): void => {
  const most = scan.tokens.length;
  for (const cue of scan.cues) {
    if (cue.value !== "outsider") continue;
    const until = firstFrom(cue.to, Math.min(cue.to + NEAR, most), (at) => endsTale(scan, at));
    const at = firstFrom(cue.to, until, (each) => THEIRS.has(scan.tokens[each]?.norm ?? ""));
    if (at === until) continue;
    const isTheirThing = startingIn(scan.components, at + 1, at + 3).length > 0;
    if (!isTheirThing && !THERE.has(scan.tokens[at - 1]?.norm ?? ""))
      muted.fill(MUTED, at, Math.min(at + SOME_WORDS, most));
    else {
      const own = firstFrom(at, Math.min(at + LONG_TALE, most), (each) => endsTale(scan, each));
      const to = Math.max(at, joinedBefore(scan, own));
      muted.fill(LEFT_OUT, namesOurs(scan, cue.to, at) ? at : cue.from, to);
    }
  }
};

const INVERTED = listed("mutedInverted");
const ASKED = listed("mutedAsked");
const OPENERS = listed("mutedOpeners");

/** "Does the water heater need draining": a verb before its subject at the head of a sentence. */
const inverted = (scan: Scan, clause: Clause): boolean => {
  if (!clause.hard) return false;
  let at = clause.from;
  while (OPENERS.has(scan.tokens[at]?.norm ?? "")) at++;
  return (
    at < clause.to && INVERTED.has(scan.tokens[at]?.norm ?? "") && ASKED.has(scan.tokens[at + 1]?.norm ?? "")
  );
};

/** The clauses that go on with a dream or a memory. */
const tale = (clauses: readonly Clause[], at: number): readonly Clause[] => {
  const end = clauses.findIndex((clause, index) => index > at && clause.hard);
  return clauses.slice(at + 1, Math.min(end < 0 ? clauses.length : end, at + 4));
};

/** "If the roof ever goes". */
const supposed = (scan: Scan, clause: Clause): boolean =>
  ["if", "unless"].includes(scan.tokens[clause.from]?.norm ?? "");

/** "so I'm getting new ones": what was advised is taken up. */
const takenUp = (scan: Scan, clause: Clause): boolean => {
  const words = scan.tokens.slice(clause.from, clause.from + 3).map((token) => token.norm);
  return (
    ["so", "and", "then"].includes(words[0] ?? "") &&
    words.some((word) => ["i", "im", "ill", "we", "were"].includes(word)) &&
    cueIn(scan, clause, ["plan"]) &&
    !cueIn(scan, clause, ["refuse", "neg"])
  );
};

/** "not buying one till pay day" puts off and does not refuse. */
const postponed = (scan: Scan, clause: Clause): boolean =>
  scan.tokens
    .slice(clause.from, clause.to + 3)
    .some((token) => token.norm === "until" || token.norm === "till");

const ELSEWHERE = listed("mutedElsewhere");

const PASSED = listed("mutedPassed");
const RIGS = listed("mutedRigs");
const HEAD = 8;

/** "Drove past a rig on its side": where such a tale begins. */
const passedRig = (scan: Scan): number => {
  const words = scan.tokens.slice(0, HEAD).map((token) => token.norm);
  return words.findIndex(
    (word, at) =>
      PASSED.has(word) &&
      ["a", "an", "another"].includes(words[at + 1] ?? "") &&
      words.slice(at + 2, at + 4).some((each) => RIGS.has(each)),
  );
};

/** "Had the fella down at the yard repack the hubs": done for us. */
const HAD = listed("mutedHad");

/** A tale of other people's rigs at the head of a note, up to the first clause that is about the speaker's own. */
const muteTale = (scan: Scan, clauses: readonly Clause[], muted: Uint8Array): void => {
  const cue = startingIn(scan.cues, 0, HEAD).find((each) => each.value === "outsider");
  const near = scan.tokens.slice(cue?.from, (cue?.to ?? 0) + 4).map((token) => token.norm);
  const isOther =
    cue !== undefined &&
    near.some((word) => ELSEWHERE.has(word)) &&
    !scan.tokens.slice(Math.max(0, cue.from - 2), cue.from).some(({ norm }) => HAD.has(norm));
  const from = isOther ? cue.from : passedRig(scan);
  if (from < 0) return;
  for (const clause of clauses) {
    const words = scan.tokens.slice(clause.from, clause.from + 4).map((token) => token.norm);
    if (
      clause.from > from &&
      words.some((word) => OWN.has(word)) &&
      !words.includes("scared") &&
      !words.includes("told")
    )
      return;
    muted.fill(MUTED, clause.from, clause.to);
  }
};

/** Marks what is asked, advised and not taken up, refused, or told of other people's rigs: it gives no record. */
export const mutedTokens = (scan: Scan, clauses: readonly Clause[]): Uint8Array => {
  const muted = new Uint8Array(scan.tokens.length);
  for (const [at, token] of scan.tokens.entries())
    if (token.norm === "?") muted.fill(MUTED, sentenceFrom(scan, at), at + 1);
  for (const [at, clause] of clauses.entries()) {
    const asked = asks(scan, clause) || inverted(scan, clause);
    const refused = cueIn(scan, clause, ["refuse"]) && !postponed(scan, clause);
    const taken = [clauses[at + 1], clauses[at + 2]].some(
      (each) => each !== undefined && takenUp(scan, each),
    );
    if (asked || refused || (!taken && cueIn(scan, clause, ["advice", "asked", "unreal"])))
      muted.fill(MUTED, clause.from, clause.to);
    const next = clauses[at + 1];
    const advice = startingIn(scan.cues, clause.from, clause.to).find(
      (cue) =>
        cue.value === "advice" &&
        cue.from >= clause.from &&
        cue.to <= clause.to &&
        !["like", "as"].includes(scan.tokens[cue.from - 2]?.norm ?? ""),
    );
    if (advice !== undefined && next !== undefined && clause.to - advice.to <= 2 && !next.hard)
      muted.fill(MUTED, next.from, next.to);
    if (
      advice !== undefined &&
      next !== undefined &&
      ["and", "or"].includes(scan.tokens[next.from]?.norm ?? "") &&
      !SUBJECTS.has(scan.tokens[next.from + 1]?.norm ?? "") &&
      !NEGATIVES.has(scan.tokens[next.from + 1]?.norm ?? "")
    )
      muted.fill(MUTED, next.from, next.to);
    if (cueIn(scan, clause, ["unreal"]))
      for (const each of tale(clauses, at)) muted.fill(MUTED, each.from, each.to);
    if (
      supposed(scan, clause) &&
      next?.hard === false &&
      ["im", "ill", "id", "well", "were", "i", "we"].includes(scan.tokens[next.from]?.norm ?? "")
    )
      muted.fill(MUTED, next.from, next.to);
    if (
      asked &&
      next?.hard === false &&
      clause.to - clause.from <= 7 &&
      ["i", "we"].includes(scan.tokens[next.from]?.norm ?? "")
    )
      muted.fill(MUTED, next.from, next.to);
    if (asked && next?.subordinate === true && !next.hard) muted.fill(MUTED, next.from, next.to);
  }
  muteTale(scan, clauses, muted);
  muteOthers(scan, muted);
  for (const { from, to } of [...droppedIn(scan), ...ofTheirRig(scan), ...ofTowCar(scan)])
    muted.fill(LEFT_OUT, from, to);
  return muted;
};
