import type { Amount } from "./amount.ts";
import type { Clause } from "./clauses.ts";
import type { Scan } from "./scan.ts";
import data from "./usage.json" with { type: "json" };
import { startingIn, touching } from "./windows.ts";

const sets: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  Object.entries(data).map(([name, words]) => [name, new Set(typeof words === "string" ? [] : words)]),
);
const isOne = (name: keyof typeof data, word: string | undefined): boolean =>
  sets.get(name)?.has(word ?? "") === true;

const DISTANCES = new Set(["miles", "mile", "km", "kms", "ks", "k"]);
const STOPS = new Set([".", "!", "?", ";", "\n"]);

/** How many words before and after an amount tell what it is of. */
const LEAD = 9;
const TAIL = 5;
/** A thing of the rig named this near makes an amount more likely told of it. */
const NEAR = 14;

const has = (words: readonly string[], name: keyof typeof data): boolean =>
  words.some((word) => isOne(name, word));

/** What is said around an amount, within its sentence. */
type Around = {
  readonly lead: readonly string[];
  readonly tail: readonly string[];
  readonly timed: boolean;
  /** No thing of the rig is named near by. */
  readonly alone: boolean;
};

const around = (scan: Scan, amount: Amount, clause: Clause): Around => {
  let floor = Math.max(0, amount.from - NEAR);
  for (let left = amount.from - 1; left >= floor; left--)
    if (STOPS.has(scan.tokens[left]?.norm ?? "")) floor = left + 1;
  const end = Math.max(clause.to, amount.to + TAIL);
  const timed = startingIn(scan.times, Math.max(floor, clause.from - 3), amount.to + TAIL).some(
    ({ to, time }) =>
      to <= end && (time.role === "point" || time.role === "since") && time.direction !== "future",
  );
  const alone = !startingIn(scan.components, floor, amount.to + TAIL).some((ref) => !ref.weak);
  return {
    lead: scan.tokens.slice(Math.max(floor, amount.from - LEAD), amount.from).map((token) => token.norm),
    tail: scan.tokens.slice(amount.to, amount.to + TAIL).map((token) => token.norm),
    timed,
    alone,
  };
};

const MOST_ON_FOOT = 60;
/** Further than this is what a meter shows, not what was towed since it was last told. */
const MOST_TOWED = 40_000;
const SINCE_REACH = 4;

/** "Forty miles away", "sixty miles an hour", "walked five miles", "planning 800 miles": no use of the rig. */
const isNeither = ({ value }: Amount, { lead, tail }: Around): boolean =>
  value >= MOST_TOWED ||
  has(lead.slice(-3), "before") ||
  lead.at(-1) === "at" ||
  (value < MOST_ON_FOOT && has(lead.slice(-4), "onFoot")) ||
  isOne("after", tail[0]) ||
  has(lead.slice(-4), "ahead") ||
  (tail[0] === "out" && tail[1] === "of") ||
  (tail[0] === "to" && tail[1] === "the" && tail[2] === "gallon");

/** "It carried us the 1,900 kilometres home". */
const carries = (lead: readonly string[]): boolean => {
  const us = lead.lastIndexOf("us");
  return us > 0 && isOne("carried", lead[us - 1]) && !["we", "i"].includes(lead[us - 2] ?? "");
};

const DRY = new Set(["dry", "no", "not", "without", "nothing"]);

/** "And now we have driven a thousand miles", "240 miles since", "thirty miles dry inside": told of the fix before it. */
const ofFix = ({ lead, tail, timed, alone }: Around): boolean => {
  if (has(lead.slice(-6), "strong") || has(tail.slice(0, 3), "strong") || carries(lead)) return true;
  if (tail[0] === "dry" || (DRY.has(tail[0] ?? "") && !alone)) return true;
  if (!timed && tail.slice(0, SINCE_REACH).includes("since")) return true;
  return !timed && (lead.includes("since") || lead.includes("now") || (lead.at(-1) ?? "") === "after");
};

const isDistance = (amount: Amount, said: Around): boolean => {
  const { lead, tail, timed, alone } = said;
  if (isNeither(amount, said) || ofFix(said)) return false;
  const crew = lead.findLastIndex((word) => isOne("crew", word));
  if (crew >= 0 && has(lead.slice(crew), "travel")) return true;
  if (lead.slice(-4).includes("meter")) return true;
  if (has(lead.slice(-2), "tells") || (alone && has(lead.slice(-6), "sums"))) return true;
  const legs = has(tail.slice(0, 2), "legs");
  return (
    (timed && (legs || alone || has(lead, "travel") || lead.includes("after"))) ||
    (tail[0] === "from" && tail.includes("to")) ||
    (tail[0] === "for" && tail[1] === "the" && has(tail.slice(2, 4), "spans"))
  );
};

/** Nothing in its sentence but the amount: "Two nights." */
const isBare = (scan: Scan, amount: Amount, clause: Clause): boolean =>
  clause.hard &&
  scan.tokens.slice(clause.from, clause.to).every((token, at) => {
    const place = clause.from + at;
    return (
      (place >= amount.from && place < amount.to) || token.kind === "mark" || isOne("bareWords", token.norm)
    );
  });

/** "3,400 miles this year and 31 nights". */
const afterDistance = (lead: readonly string[]): boolean =>
  lead.at(-1) === "and" && lead.some((word) => DISTANCES.has(word));

/** "Six nights at the lake", "in her". */
const isThere = (tail: readonly string[]): boolean =>
  isOne("places", tail[0]) ||
  (tail[0] === "in" && tail[1] !== "a" && tail[1] !== "row") ||
  (tail[0] === "for" && tail[1] === "the" && has(tail.slice(2, 4), "spans"));

/** "Stayed three nights", "slept in it two nights"; "slept badly for two nights" tells of something else. */
const spent = (lead: readonly string[]): "there" | "badly" | undefined => {
  const verb = lead.slice(-4).findLast((word) => isOne("nightVerbs", word));
  const between = lead.slice(lead.lastIndexOf(verb ?? "") + 1);
  if (verb === undefined) return undefined;
  if (between.some((word) => word.endsWith("ly"))) return "badly";
  const there =
    between.length === 0 ? !has(lead.slice(-4), "things") : isOne("slept", verb) || isOne("spends", verb);
  return there ? "there" : undefined;
};

/** Who or what the last subject before an amount is: the crew, or a thing that was mended. */
const subject = (lead: readonly string[]): "crew" | "thing" | undefined => {
  const thing = lead.findLastIndex((word) => isOne("things", word));
  const crew = lead.findLastIndex((word) => isOne("crew", word));
  if (thing < 0 && crew < 0) return undefined;
  return thing > crew ? "thing" : "crew";
};

const isStay = (scan: Scan, amount: Amount, clause: Clause): boolean => {
  const { lead, tail, timed, alone } = around(scan, amount, clause);
  if (has(lead.slice(-6), "ahead") || tail[0] === "of") return false;
  const close = lead.slice(-6);
  const crew = close.findLastIndex((word) => isOne("crew", word));
  if (isBare(scan, amount, clause) || afterDistance(lead)) return true;
  if (lead.at(-1) === "for" && subject(lead) === "thing") return false;
  if (has(tail.slice(0, 2), "fix") && !(tail[0] === "on" && tail[1] === "the")) return false;
  const how = spent(lead);
  if (how !== undefined) return how === "there";
  if (has(close.slice(crew + 1), "fix")) return false;
  return (
    (crew >= 0 && has(close.slice(crew), "stay")) || isThere(tail) || (alone && (timed || !has(lead, "fix")))
  );
};

/**
 * Whether an amount surely tells no use of the rig: what lies ahead, how far away something is, what was walked, or how long
 * a thing took or held ("the fridge took two nights").
 */
export const isNoUse = (scan: Scan, amount: Amount, clause: Clause): boolean => {
  const said = around(scan, amount, clause);
  if (amount.what === "miles" || amount.what === "km") return isNeither(amount, said);
  if (amount.what !== "nights") return false;
  const { lead, tail } = said;
  return (
    has(lead.slice(-6), "ahead") ||
    spent(lead) === "badly" ||
    (subject(lead) !== "crew" && isOne("ofThings", lead.at(-1)) && !isThere(tail))
  );
};

/** Whether an amount tells how far or long the rig itself was used. */
export const isRigUse = (scan: Scan, amount: Amount, clause: Clause): boolean => {
  if (amount.what === "nights") return isStay(scan, amount, clause);
  return (
    (amount.what === "miles" || amount.what === "km") && isDistance(amount, around(scan, amount, clause))
  );
};

/** The amount that another one corrects, told within a few words before it. */
export const correctedBy = (amounts: readonly Amount[], amount: Amount): Amount | undefined =>
  touching(amounts, amount.from - NEAR, amount.from).findLast(
    (other) => other.to <= amount.from && other.what === amount.what && other.from > amount.from - NEAR,
  );
