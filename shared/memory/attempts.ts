import type { KeptRecord } from "../history.ts";
import { meet, ofAnotherPart, particularsOf, sameStuff, without } from "./part.ts";
import type { Told } from "./told.ts";
import { shareAny, tellingStems } from "./words.ts";
import { isCure, knownThings, tellsBreaking, tellsDead, tellsReturn, undoes } from "./work.ts";

/** "Greased them again" is the next round of a care, not a failure of the last. */
const isRound = (told: Told, earlier: KeptRecord): boolean => {
  const { action, fault, kind } = told.draft.fields;
  return kind === "repair" && !isCure(action) && fault === null && action === earlier.fields.action;
};

/** "The new shackle snapped": what was put in then has broken since. */
const brokeSince = ({ words }: Told, { fields }: KeptRecord): boolean =>
  tellsBreaking(words) && shareAny(tellingStems(fields.materials.join(" ")), tellingStems(words));

/** "The paracord frayed": the trouble is with what the earlier fix put in. */
const isOfItsStuff = ({ draft: { fields } }: Told, { fields: earlier }: KeptRecord): boolean =>
  fields.fault !== null &&
  fields.kind !== "todo" &&
  (isCure(fields.action) || fields.kind === "fault") &&
  shareAny(tellingStems(earlier.materials.join(" ")), tellingStems(fields.fault));

/** "The tape soaked through, so …": what an earlier fix put in is spoken of before new work with other stuff. */
const speaksOfItsStuff = ({ draft: { fields }, leadUp }: Told, { fields: earlier }: KeptRecord): boolean =>
  fields.kind === "repair" &&
  isCure(fields.action) &&
  shareAny(
    tellingStems(knownThings(leadUp).join(" ")),
    without(tellingStems(earlier.materials.join(" ")), tellingStems(fields.materials.join(" "))),
  );

/** The trouble that the earlier fix was to cure is there: the seam that was sealed drips. */
const isBack = (told: Told, { fields: earlier }: KeptRecord): boolean => {
  const { fault, kind, action } = told.draft.fields;
  if (fault === null || kind === "todo" || (kind === "repair" && !isCure(action))) return false;
  const trouble = particularsOf(told.draft.fields, told.words);
  return undoes(fault, earlier.action) && !ofAnotherPart(trouble, particularsOf(earlier));
};

/** The trouble told is one that the earlier fix is known to have been done for. */
const isSameTrouble = (told: Told, { fields: earlier }: KeptRecord): boolean => {
  const { fault, kind, action, where } = told.draft.fields;
  if (fault === null || kind === "todo" || (kind === "repair" && !isCure(action))) return false;
  const [now, before] = [particularsOf(told.draft.fields), particularsOf(earlier)];
  const named = tellingStems([told.called, where ?? "", earlier.where ?? ""].join(" "));
  const troubles = [...now.trouble].filter((stem) => !named.has(stem));
  return shareAny(troubles, before.trouble) && !ofAnotherPart(now, before);
};

/** It went dead once more: "the tail light packed up, so …". */
const isDeadAgain = (told: Told, { fields: earlier }: KeptRecord): boolean => {
  const { fault, kind, action } = told.draft.fields;
  return (
    kind === "repair" && isCure(action) && tellsDead(fault ?? told.leadUp) && tellsDead(earlier.fault ?? "")
  );
};

/** The words say, or the last look said, that the earlier fix let go. */
export const letGo = (told: Told, earlier: KeptRecord): boolean =>
  isBack(told, earlier) ||
  isSameTrouble(told, earlier) ||
  (tellsReturn(told.words) && !isRound(told, earlier)) ||
  tellsReturn(told.draft.fields.fault ?? "") ||
  earlier.fields.outcome === "failed" ||
  brokeSince(told, earlier) ||
  isOfItsStuff(told, earlier) ||
  speaksOfItsStuff(told, earlier) ||
  isDeadAgain(told, earlier) ||
  (earlier.fields.outcome === "partly" &&
    meet(particularsOf(told.draft.fields, told.words), particularsOf(earlier.fields)));

const aboutOneTrouble = (told: Told, earlier: KeptRecord): boolean => {
  const { fields } = told.draft;
  if (letGo(told, earlier)) return true;
  if (!isCure(fields.action)) return fields.action === earlier.fields.action;
  if (fields.action === "replace" && fields.materials.length === 0) return true;
  return (
    meet(particularsOf(fields, told.words), particularsOf(earlier.fields)) ||
    sameStuff(fields, earlier.fields)
  );
};

/**
 * The live piece of work that new work on the same thing follows on: the nearest attempt on the same trouble, or the
 * last round of the same care.
 */
export const followedOn = (told: Told, live: readonly KeptRecord[]): KeptRecord | undefined => {
  const earlier = live.filter((record) => aboutOneTrouble(told, record));
  const about = particularsOf(told.draft.fields, told.words);
  return earlier.find((record) => meet(about, particularsOf(record.fields))) ?? earlier[0];
};
