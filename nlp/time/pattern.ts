import type { Token } from "./tokens.ts";

/** A slot's value and the index of the token after it. */
export type SlotRead<T> = { readonly value: T; readonly next: number };

/** One element of a compiled pattern. */
export type Item = {
  readonly words: ReadonlySet<string> | undefined;
  readonly slot: string | undefined;
  /** What the slot holds; "when2" holds the same as "when". */
  readonly kind: string | undefined;
  readonly comma: boolean;
};

const optionalItem = /^(.+)\?$/u;

const itemOf = (written: string): Item => {
  const comma = written.startsWith(",");
  const body = comma ? written.slice(1) : written;
  const slot = /^<(\w+)>$/u.exec(body)?.[1];
  const words = slot === undefined ? new Set(body.split("|")) : undefined;
  return { comma, slot, kind: slot?.replace(/2$/u, ""), words };
};

const withComma = (item: string): string => (item.startsWith(",") ? item : `,${item}`);
const withoutGap = (next: string | undefined, more: readonly string[]): string[] =>
  next === undefined ? [] : [next, ...more];

const variantsOf = (items: readonly string[]): string[][] => {
  const [head, ...tail] = items;
  if (head === undefined) return [[]];
  const rest = variantsOf(tail);
  const optional = optionalItem.exec(head)?.[1];
  const taken = rest.map((variant) => [optional ?? head, ...variant]);
  if (optional === undefined) return taken;
  const comma = head.startsWith(",");
  return [
    ...taken,
    ...rest.map(([next, ...more]) =>
      comma && next !== undefined ? [withComma(next), ...more] : withoutGap(next, more),
    ),
  ];
};

/**
 * Compiles a phrase: words, alternatives with "|", slots in angle brackets, "?" after what may be left out,
 * "," before what may follow a comma. "the? <season> before last" gives two sequences, the longer first.
 */
export const compile = (phrase: string): readonly (readonly Item[])[] =>
  variantsOf(phrase.split(" ")).map((items) => items.map(itemOf));

/** Whether an item may stand at this token, as far as what lies before it goes. */
export const joins = (item: Item, token: Token, first: boolean): boolean =>
  first || token.gap === "space" || token.gap === "none" || (token.gap === "comma" && item.comma);
