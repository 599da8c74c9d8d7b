import { isAmong } from "./context.ts";
import { DAY_PARTS, isAmbiguous, MONTHS } from "./lexicon.ts";
import { type Place, wordAfter, wordBefore } from "./rule.ts";

/** "may to june". */
const monthFollows = ({ tokens, at }: Place): boolean =>
  /^(?:-|\/|to|through|or|and)$/u.test(tokens[at + 1]?.word ?? "") && MONTHS.has(tokens[at + 2]?.word ?? "");

/** "June held the light", "me and April". */
const isPerson = (place: Place): boolean => {
  const { tokens, at } = place;
  if (!isAmong("nameMonths", tokens[at]?.raw ?? "") || tokens[at + 1]?.raw === "of") return false;
  const before = wordBefore(place);
  const pair = before === "and" && /^(?:me|i|him|he|us|her)$/u.test(tokens[at - 2]?.raw ?? "");
  const acts =
    isAmong("nameAfter", wordAfter({ ...place, next: at + 1 })) &&
    (before === "" || !isAmong("leads", before));
  return pair || acts || isAmong("nameBefore", before);
};

/** "In may", "may to june", "It was May"; but "the ring and the seal may leak". */
const isMay = (place: Place, led: boolean): boolean => {
  const token = place.tokens[place.at];
  const firm = led && !/^(?:and|or|to)$/u.test(wordBefore(place));
  const verb = isAmong("verbsAfterMay", wordAfter({ ...place, next: place.at + 1 }));
  if (firm || verb) return firm;
  return led || monthFollows(place) || (token?.capital === true && token.gap === "space");
};

/** Whether the month's name at the start of a place is one: "may" and "march" only where the words around say so. */
export const isMonth = (place: Place): boolean => {
  const token = place.tokens[place.at];
  if (token === undefined) return false;
  const led = isAmong("leads", wordBefore(place));
  if (isPerson(place)) return false;
  if (token.raw === "may") return isMay(place, led);
  if (token.raw === "march") return led || !isAmong("marchOn", wordAfter({ ...place, next: place.at + 1 }));
  const heads = place.tokens[place.at + 1]?.raw === ":";
  return !isAmong("shortMonths", token.raw) || led || token.capital || heads || monthFollows(place);
};

/** Whether "spring" or "fall" at the end of a place is a season; `firm` when "last" or "this" stands before it. */
export const isSeason = (place: Place, firm = false): boolean => {
  const word = place.tokens[place.next - 1]?.raw;
  if (word !== "spring" && word !== "fall") return true;
  if (isAmong("springOwners", wordBefore(place))) return false;
  const after = wordAfter(place);
  if (word === "fall") return firm || !isAmong("fallParticles", after);
  return !isAmong("springThings", after) || (firm && /^(?:in|on|that|was|i)$/u.test(after));
};

/** How far back, in words, the work is looked for that "sat" may date. */
const DEED_REACH = 9;
const DEED = /(?:[^e]ed|[a-z]d)$/u;

const tellsDeed = ({ tokens, at }: Place): boolean => {
  for (let back = at - 1; back >= 0 && back >= at - DEED_REACH; back--) {
    const raw = tokens[back]?.raw ?? "";
    if (isAmong("deeds", raw) || (raw.length > 3 && DEED.test(raw))) return true;
    if (tokens[back]?.gap === "stop") return false;
  }
  return false;
};

const GOVERNED = 4;
/** "In it", "off the old trailer": no subject of what follows. */
const isGoverned = ({ tokens, at }: Place): boolean =>
  tokens
    .slice(Math.max(0, at - GOVERNED), at)
    .some(
      ({ raw, gap }, index, all) => gap === "space" && index < all.length - 1 && isAmong("governors", raw),
    );

/** "New seal in it sat, dry now", "cleaned the pins sat and it works": a short day after what was done. */
const datesDeed = (place: Place): boolean => {
  const { tokens, at } = place;
  const before = wordBefore(place);
  const token = tokens[at];
  if (before === "" || token?.gap !== "space") return false;
  const other =
    token.raw === "sun" ? isAmong("sunOwners", before) : isAmong("sitters", before) && !isGoverned(place);
  if (other || !tellsDeed(place)) return false;
  const next = tokens[at + 1];
  return next === undefined || next.gap === "stop" || next.gap === "comma" || isAmong("afterDay", next.raw);
};

/** "sat", "sun" and "wed" are days after a word that says so, or written like an entry in a log. */
export const isDay = (place: Place, at = place.at): boolean => {
  const token = place.tokens[at];
  if (token === undefined || !isAmbiguous(token.raw) || token.raw === "mon") return true;
  if (isAmong("dayLeads", wordBefore({ ...place, at }))) return true;
  const after = place.tokens[at + 1];
  if (at === 0 && isAmong("afterBareDay", after?.raw ?? "")) return true;
  if (after?.gap === "space" && DAY_PARTS.has(after.word)) return true;
  if (token.gap === "stop" && /^[:\-–—]$/u.test(after?.raw ?? "")) return true;
  if (token.capital && (after === undefined || after.gap !== "space" || /^\d/u.test(after.raw))) return true;
  return datesDeed({ ...place, at });
};

/** Whether a stretch ends there: nothing follows, or something new begins. */
export const restsThere = ({ tokens, next }: Place): boolean => {
  const after = tokens[next];
  return (
    after === undefined || after.gap === "stop" || after.gap === "comma" || isAmong("restarts", after.word)
  );
};

/** "Twenty fifteen": said so, it is a year. */
const isSpoken = ({ tokens, at }: Place): boolean => /^(?:nineteen|twenty)$/u.test(tokens[at]?.raw ?? "");

/** "2022 we hired it out", "2024 was quieter": a year told over what follows. */
const isOver = (place: Place): boolean => {
  const gap = place.tokens[place.at]?.gap;
  return (gap === "stop" || gap === "comma") && isAmong("turnFollows", wordAfter(place));
};

/** Whether a bare year is a year in which something was done. */
export const isYear = (place: Place): boolean => {
  const before = place.tokens[place.at]?.gap === "comma" ? "" : wordBefore(place);
  if (isAmong("counted", wordAfter(place)) || isAmong("make", before)) return false;
  return isAmong("leads", before) || restsThere(place) || isSpoken(place) || isOver(place);
};

/** "Christmas", not "Christmas lights". */
export const isFeast = (place: Place): boolean => !isAmong("notFeasts", wordAfter(place));
