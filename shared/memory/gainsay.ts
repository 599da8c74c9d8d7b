import type { KeptRecord, KeptUsage } from "../history.ts";
import type { RecordFields } from "../record.ts";
import type { Change } from "./correction.ts";
import { kinOf } from "./families.ts";
import { compareMaterials } from "./materials.ts";
import { comparePlaces } from "./place.ts";
import { plainWords, shareAny } from "./words.ts";
import { isOther } from "./work-again.ts";

/** How far a change speaks against what is kept: by name, by giving another value, by filling a gap, or not at all. */
export const DENIES = 3;
export const DIFFERS = 2;
export const FILLS = 1;
export const SAME = 0;

type Fields = Partial<RecordFields>;

const onComponent = (kept: RecordFields, to: Fields): number => {
  if (to.component === undefined) return SAME;
  if (to.component === kept.component) return Object.keys(to).length > 1 ? FILLS : SAME;
  return kinOf(to.component).includes(kept.component) ? DIFFERS : SAME;
};

const onPlace = (kept: RecordFields, to: Fields): number => {
  if (to.where == null) return SAME;
  if (kept.where === null) return isOther(to.where) ? SAME : FILLS;
  if (kept.where === to.where) return SAME;
  return isOther(to.where) || comparePlaces(kept.where, to.where) === "different" ? DENIES : DIFFERS;
};

const PLAIN = ["action", "cost", "kind", "outcome", "fault", "due"] as const;

const onPlain = (kept: RecordFields, to: Fields): number =>
  PLAIN.reduce<number>((most, field) => {
    if (to[field] === undefined || to[field] === kept[field]) return most;
    return Math.max(most, kept[field] === null ? FILLS : DIFFERS);
  }, SAME);

const onFields = (kept: RecordFields, to: Fields): number =>
  onComponent(kept, to) + onPlace(kept, to) + onPlain(kept, to);

const onMaterials = (kept: RecordFields, change: Extract<Change, { change: "materials" }>): number => {
  if (change.drop.length > 0 && compareMaterials(change.drop, kept.materials) === "same") return DENIES;
  return kept.materials.length > 0 && change.how === "instead" ? DIFFERS : FILLS;
};

const shares = (one: string | null, other: string): boolean =>
  one !== null && shareAny(plainWords(one), new Set(plainWords(other)));

const onPhrase = ({ materials, where, fault, kind }: RecordFields, instead: string): number => {
  if ([...materials, where, fault].some((words) => shares(words, instead))) return DENIES;
  return kind === "repair" ? FILLS : SAME;
};

const onNumber = ({ cost, exposure }: RecordFields, { instead }: Extract<Change, { change: "number" }>) => {
  const told = [cost, ...exposure.map(({ count }) => count)].filter((value) => value !== null);
  if (told.length === 0) return SAME;
  return told.some((value) => value === instead) ? DENIES : DIFFERS;
};

/** How far one change speaks against one record. */
export const gainsays = (record: KeptRecord, change: Change): number => {
  const { fields } = record;
  switch (change.change) {
    case "fields":
      return onFields(fields, change.to);
    case "date":
      return (fields.kind === "todo" ? fields.due : fields.date) === null ? FILLS : DIFFERS;
    case "materials":
      return onMaterials(fields, change);
    case "phrase":
      return onPhrase(fields, change.instead);
    case "number":
      return onNumber(fields, change);
    case "done-by":
      return record.doneBy === change.to ? SAME : DIFFERS;
    case "remove":
    case "part":
    case "join":
      return DIFFERS;
  }
};

/** The same for an entry of use: only numbers and taking away concern it. */
export const gainsaysUse = ({ usage }: KeptUsage, change: Change): number => {
  if (change.change === "remove") return DIFFERS;
  if (change.change === "date") return FILLS;
  if (change.change !== "number") return SAME;
  const value = "reading" in usage ? usage.reading : usage.count;
  return value === change.instead ? DENIES : DIFFERS;
};
