import type { Change } from "../../shared/memory/correction.ts";
import type { Shown } from "../../shared/memory/scene.ts";
import type { Offer } from "../correct/offer.ts";
import { saysSame } from "../correct/offer-signs.ts";

/** "The new one is still in its bag, so what I did was clean the old one": other work, and not none. */
const DID_INSTEAD =
  /\b(?:(?:so )?(?:what|all) (?:i|we) (?:really |actually )?did (?:was|is)|so (?:that['’]?s|that is) (?:how|what) (?:i|we)|(?:i|we) must(?: have|['’]ve|a| of)? (?:just |only )?\w+ (?:it|this|that|the|them)\b|all (?:i|we) ever did)/i;

const ALL_I_DID =
  /(?:\b(?:no|nah|not|never|none|still|instead|wrong|lie|dream\w*)\b|n['’]?t\b).*\b(?:what|all) (?:i|we) (?:really |actually )?did (?:was|is)\b/i;

/** Whether a message says that other work was done than was told. */
export const tellsInstead = (text: string): boolean => DID_INSTEAD.test(text);

/** The other work that was done instead, where a message says in so many words what was. */
export const doneInstead = (
  text: string,
  offers: readonly Offer[],
  fields: Shown["fields"],
): Offer | undefined => {
  const works = offers.filter(({ field }) => field === "action");
  const [only] = works.filter((each) => !saysSame(each, fields) && each.sort === "first");
  return ALL_I_DID.test(text) && !works.some((each) => saysSame(each, fields)) ? only : undefined;
};

/** Work that puts nothing in. */
const PUTS_NOTHING_IN: ReadonlySet<string> = new Set([
  "clean",
  "adjust",
  "tighten",
  "inspect",
  "test",
  "reset",
]);

/** "All I did was clean the old one": what was to go in did not. */
export const withoutPutIn = (
  changes: readonly Change[],
  text: string,
  { materials }: Shown["fields"],
): readonly Change[] => {
  const onlyDone = changes.some(
    (change) => change.change === "fields" && PUTS_NOTHING_IN.has(change.to.action ?? ""),
  );
  return onlyDone && ALL_I_DID.test(text) && changes.length === 1 && materials.length > 0
    ? [...changes, { change: "materials", drop: materials, add: [], how: "instead" }]
    : changes;
};
