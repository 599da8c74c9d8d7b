import type { Offer } from "./offer.ts";

/** How sure that a value is what the record should have, instead or besides, or what it should not; 0 to 1. */
export type Rate = (signs: readonly string[]) => Readonly<Record<"in" | "also" | "drop", number>>;

/** A value named, and how sure that the record should have it. */
export type Rated = { readonly offer: Offer; readonly sure: number; readonly how: "in" | "also" | "drop" };

/** Words that deny what stands right behind them. */
export const DENIES: ReadonlySet<string> = new Set("not isnt wasnt arent werent never".split(" "));
