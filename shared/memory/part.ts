import type { RecordFields } from "../record.ts";
import { componentName } from "../vocabulary.ts";
import table from "./parts.json" with { type: "json" };
import { shareAny, stemOf, tellingStems } from "./words.ts";

/** What an account tells of its thing beyond the thing's own name: the part, the trouble, the stuff. */
export type Particulars = { readonly trouble: ReadonlySet<string>; readonly all: ReadonlySet<string> };

export const without = (stems: Iterable<string>, own: ReadonlySet<string>): ReadonlySet<string> =>
  new Set([...stems].filter((stem) => !own.has(stem)));

export const particularsOf = (fields: RecordFields, stretch = ""): Particulars => {
  const own = tellingStems(componentName(fields.component));
  const trouble = without(tellingStems(fields.fault ?? ""), own);
  const rest = tellingStems([stretch, fields.where ?? "", ...fields.materials].join(" "));
  return { trouble, all: new Set([...trouble, ...without(rest, own)]) };
};

const PARTS: ReadonlySet<string> = new Set([...table.parts].flatMap((part) => [...tellingStems(part)]));

/** Whether the trouble is of a part that the other account says nothing of. */
export const ofAnotherPart = (trouble: Particulars, other: Particulars): boolean =>
  [...trouble.trouble].some((stem) => PARTS.has(stem)) &&
  ![...trouble.trouble].some((stem) => PARTS.has(stem) && other.all.has(stem));

/** Whether what is told of one account's trouble or stuff comes up in the other. */
export const meet = (one: Particulars, other: Particulars): boolean =>
  shareAny(one.trouble, other.all) || shareAny(other.trouble, one.all);

const stuff = (fields: RecordFields): ReadonlySet<string> =>
  new Set([...tellingStems(fields.materials.join(" "))].map(stemOf));

/** Whether both put the same stuff in. */
export const sameStuff = (one: RecordFields, other: RecordFields): boolean =>
  shareAny(stuff(one), stuff(other));
