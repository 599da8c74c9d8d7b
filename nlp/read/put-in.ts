import type { Action } from "../../shared/vocabulary.ts";
import { TOOLS } from "../lexicon/lexicon.ts";
import type { MaterialRef } from "../lexicon/materials.ts";
import type { Deed } from "./deed.ts";
import { governor } from "./governor.ts";
import { wordAt } from "./ground.ts";
import type { Scan } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { startingIn, touching } from "./windows.ts";
import { AUXILIARIES, DETERMINERS, listed, PEOPLE, SUBJECTS } from "./words.ts";

const NEW = listed("usesNew");
const OLD = listed("usesOld");
const SOLID_GROUPS = listed("usesSolidGroups");
const APART_FROM = listed("usesApartFrom");
const MEASURES: ReadonlySet<string> = new Set([...listed("objectsMeasures"), "piece"]);
const SEASON_AFTER = new Set([
  "in",
  "next",
  "last",
  "by",
  "before",
  "until",
  "since",
  "every",
  "for",
  "come",
  "of",
]);
const MEANS = listed("objectsMeans");
const JOINS = new Set(["and", "plus", ","]);
/** Work that uses up nothing but fluids, cleaners and grease. */
const SERVICE: ReadonlySet<Action> = new Set([
  "clean",
  "lubricate",
  "flush",
  "charge",
  "tighten",
  "reset",
  "adjust",
]);
const BARE: ReadonlySet<Action> = new Set(["inspect", "test", "tighten", "reset", "remove"]);

/** The material that a coordination joins to this one on its left: "a filter" of "a filter and a plug". */
export const partnerOf = (ref: MaterialRef, scan: Scan): MaterialRef | undefined => {
  let by = governor(scan, ref.from);
  if (!JOINS.has(wordAt(scan, by))) return undefined;
  if (wordAt(scan, by - 1) === ",") by--;
  return touching(scan.materials, by, by).find((other) => other.to === by);
};

export const saysNew = (scan: Scan, ref: MaterialRef): boolean => {
  const partner = partnerOf(ref, scan);
  if (partner !== undefined && saysNew(scan, partner)) return true;
  const by = governor(scan, ref.from);
  for (let at = ref.from - 1; at > by; at--) if (NEW.has(wordAt(scan, at))) return true;
  return NEW.has(wordAt(scan, ref.from));
};

const INDEFINITE = listed("phrasesIndefinite");

const isIndefinite = (scan: Scan, ref: MaterialRef): boolean => {
  const by = governor(scan, ref.from);
  const between = scan.tokens.slice(by + 1, ref.from);
  return between.some((token) => token.kind === "number" || INDEFINITE.has(token.norm));
};

const isDefinite = (ref: MaterialRef, scan: Scan): boolean =>
  scan.tokens
    .slice(governor(scan, ref.from) + 1, ref.from)
    .some(({ norm }) => norm === "the" || norm === "that");

export const isOld = (ref: MaterialRef, scan: Scan): boolean => {
  const by = governor(scan, ref.from);
  const between = scan.tokens.slice(by + 1, ref.from).map((token) => token.norm);
  return between.some((word) => OLD.has(word) && !(word === "old" && isIndefinite(scan, ref)));
};

/** "A chunk of hose": stuff, and no tool. */
const isMeasured = (ref: MaterialRef, scan: Scan): boolean =>
  wordAt(scan, ref.from - 1) === "of" && MEASURES.has(wordAt(scan, ref.from - 2));

/** "In the spring", and "fitting it". */
export const isOtherWord = (ref: MaterialRef, scan: Scan): boolean =>
  (ref.name === "spring" && SEASON_AFTER.has(wordAt(scan, governor(scan, ref.from)))) ||
  (ref.name === "fitting" && (DETERMINERS.has(wordAt(scan, ref.to)) || SUBJECTS.has(wordAt(scan, ref.to))));

/** A tool, unless it is new, one of a number or put in: "two clamps", "a new pump". */
export const isTool = (ref: MaterialRef, event: Event, scan: Scan): boolean => {
  if (!TOOLS.has(ref.name)) return false;
  if (saysNew(scan, ref) || isMeasured(ref, scan)) return false;
  const deed = nearestDeed(event, ref);
  const partner = partnerOf(ref, scan);
  if (partner !== undefined && !TOOLS.has(partner.name)) return false;
  return !(
    isIndefinite(scan, ref) &&
    deed !== undefined &&
    ["fit", "fasten", "new"].includes(deed.sense) &&
    isObject(ref, deed, scan)
  );
};

const AWAY = 8;

/** What another thing came in place of, or what was made of another: "replaced the screws with bolts", "a bracket out of angle". */
export const isTradedAway = (ref: MaterialRef, event: Event, scan: Scan): boolean => {
  const deed = nearestDeed(event, ref);
  if (deed === undefined || !isObject(ref, deed, scan)) return false;
  const trades = SWAPS.test(wordAt(scan, deed.at)) && !saysNew(scan, ref);
  for (let at = ref.to; at < ref.to + AWAY; at++) {
    if (scan.tokens[at]?.kind === "mark" || event.deeds.some((other) => other.at === at)) return false;
    if (trades && ["with", "for"].includes(wordAt(scan, at))) return hasMaterialAfter(scan, at);
    if (wordAt(scan, at) === "out" && wordAt(scan, at + 1) === "of") return true;
  }
  return false;
};

const hasMaterialAfter = (scan: Scan, at: number): boolean =>
  touching(scan.materials, at, at + 4).some((ref) => ref.from > at && ref.from <= at + 4);

/** Said to be at fault: "the rivet sheared off". */
export const suffers = (ref: MaterialRef, told: Told, scan: Scan): boolean => {
  if (!SOLID_GROUPS.has(ref.group ?? "") && !isDefinite(ref, scan)) return false;
  const next = startingIn(told.faults, ref.to, ref.to + 4)[0];
  if (next === undefined || saysNew(scan, ref)) return false;
  const between = scan.tokens.slice(ref.to, next.from).map((token) => token.norm);
  return !between.some((each) => ["and", "on", "in", "so", "i", "where", "over"].includes(each));
};

/** Only the name of what is worked on ("the drain valve"), not something put in. */
export const isMention = (ref: MaterialRef, told: Told, scan: Scan): boolean =>
  !isIndefinite(scan, ref) &&
  touching(told.topic.mentions, ref.from, ref.to).some(
    (mention) => mention.from < ref.to && ref.from < mention.to,
  ) &&
  !saysNew(scan, ref) &&
  !MEANS.has(wordAt(scan, governor(scan, ref.from)));

const nearestDeed = (event: Event, ref: MaterialRef): Deed | undefined =>
  event.deeds.findLast((deed) => deed.at < ref.to);

const PUTTING: ReadonlySet<string> = new Set(["fit", "apply", "fasten"]);
const SWAPS = /^(?:swap|switch|trad|exchang|chang|replac)/;
const TRADES = /^(?:swap|switch|trade|exchange|change)~/;

/** The direct object of its deed: nothing but the verb's own words before the noun phrase. */
const isObject = (ref: MaterialRef, deed: Deed, scan: Scan): boolean => {
  const by = governor(scan, ref.from);
  if (by < deed.at || by >= Math.max(deed.to, deed.at + 1)) return false;
  return !scan.tokens.slice(deed.at, by).some((token) => token.kind === "mark") && isNearVerb(scan, deed, by);
};
const isNearVerb = (scan: Scan, deed: Deed, by: number): boolean =>
  scan.tokens
    .slice(deed.at + 1, by + 1)
    .every((token) => ["in", "on", "up", "out", "down", "back", "it"].includes(token.norm)) ||
  by - deed.at <= 3;

/** How far behind its object, in words, "back" may stand. */
const BACK_WITHIN = 6;

/** Put back, so there before: "screwed the hinge of the door back on". */
const goesBack = (ref: MaterialRef, deed: Deed, scan: Scan): boolean => {
  if (isIndefinite(scan, ref)) return false;
  if (/\bback\b/.test(deed.source)) return true;
  const after = scan.tokens.slice(ref.to, ref.to + BACK_WITHIN);
  const end = after.findIndex((token) => token.kind === "mark" || MEANS.has(token.norm));
  return after.slice(0, end < 0 ? after.length : end).some((token) => token.norm === "back");
};

/** Whether a part or fastener went in: new, by means of it, as the object of a deed that puts things in, or beside one that did. */
const solidGoesIn = (
  ref: MaterialRef,
  deed: Deed,
  by: string,
  event: Event,
  told: Told,
  scan: Scan,
): boolean => {
  if (MEANS.has(by) || saysNew(scan, ref) || joinedTo(ref, event, told, scan)) return true;
  if (by === "for") return TRADES.test(deed.source);
  if (by === "in" && ref.group === "timber") return true;
  if (by === "through" && ref.group === "timber") return deed.sense === "fasten";
  const number =
    scan.tokens[ref.from - 1]?.kind === "number" ||
    ["two", "three", "four", "six", "eight"].includes(wordAt(scan, ref.from - 1));
  if (number && ref.group === "fastener" && ref.from - deed.to <= 3) return true;
  return (
    isObject(ref, deed, scan) &&
    ["fit", "fasten", "apply", "new"].includes(deed.sense) &&
    !goesBack(ref, deed, scan)
  );
};

const joinedTo = (ref: MaterialRef, event: Event, told: Told, scan: Scan): boolean => {
  const partner = partnerOf(ref, scan);
  return partner !== undefined && goesIn(partner, event, told, scan);
};

/** "The insert i put in", "the patch I glued over the tear": the noun before a relative clause. */
export const isPutIn = (ref: MaterialRef, event: Event, scan: Scan): boolean =>
  event.deeds.some((deed) => {
    if (!PUTTING.has(deed.sense) || deed.at - ref.to > 4) return false;
    if (DETERMINERS.has(wordAt(scan, deed.at + 1))) return false;
    const between = scan.tokens.slice(ref.to, deed.at).map((token) => token.norm);
    return (
      between.some((word) => PEOPLE.has(word) && word !== "who") &&
      between.every(
        (word) => PEOPLE.has(word) || AUXILIARIES.has(word) || ["that", "which", "just"].includes(word),
      )
    );
  });

/** How far ahead of its deed, in words, a means may stand. */
const AHEAD = 14;

/** Named before the deed: "went at it with flat bar and new screws", "a new seal, put that in". */
const goesInAhead = (ref: MaterialRef, event: Event, told: Told, by: string, isNew: boolean): boolean => {
  const ahead = (most: number) =>
    event.deeds.some((each) => each.sense === "new" && each.from - ref.to <= most);
  const ofOther = startingIn(told.deeds, ref.from - AHEAD, ref.from).some((deed) => deed.at < ref.from);
  return (isNew && ahead(3)) || (MEANS.has(by) && event.kind === "work" && !ofOther && ahead(AHEAD));
};

/** Whether what stands here went in or on: after a deed, with a word of means, or new. */
export const goesIn = (ref: MaterialRef, event: Event, told: Told, scan: Scan): boolean => {
  const by = wordAt(scan, governor(scan, ref.from));
  const deed = nearestDeed(event, ref);
  const isNew = saysNew(scan, ref);
  if (isPutIn(ref, event, scan) && !isOld(ref, scan)) return true;
  if (deed === undefined) return goesInAhead(ref, event, told, by, isNew);
  if (deed.sense === "prep" && !isNew && !MEANS.has(by)) return false;
  if (ref.from > deed.to + 25) return false;
  if (SOLID_GROUPS.has(ref.group ?? "")) return solidGoesIn(ref, deed, by, event, told, scan);
  return !APART_FROM.has(by) || isObject(ref, deed, scan);
};

/** Whether such work may use up such a material. */
export const fits = (ref: MaterialRef, action: Action, scan: Scan): boolean => {
  const by = wordAt(scan, governor(scan, ref.from));
  if (action === "tighten") return ref.group === "adhesive";
  if (BARE.has(action)) return false;
  if (action === "adjust")
    return (
      ["metal", "fastener", "timber", "part", "sheet", "cloth"].includes(ref.group ?? "") && MEANS.has(by)
    );
  if (SERVICE.has(action) && SOLID_GROUPS.has(ref.group ?? ""))
    return action === "lubricate" && saysNew(scan, ref);
  return true;
};
