import {
  ALIAS,
  DIALECT,
  DROP,
  KEEP,
  MATERIAL_INDEX,
  MATERIAL_SAYINGS,
  type MaterialClass,
  TOOL_INDEX,
} from "./lexicon.ts";
import { plain, singular, type Token } from "./tokens.ts";

/** Something put in or on, as a noun phrase: tokens `from` to `to`, its kind word at `head`. */
export type MaterialRef = {
  readonly from: number;
  readonly to: number;
  readonly head: number;
  readonly name: string;
  /** Null when the head is no known kind word. */
  readonly group: MaterialClass | null;
  readonly brands: readonly string[];
};

const MOST_BEFORE = 4;
const MADE_UP: ReadonlySet<string> = new Set([
  "sealant",
  "tape",
  "adhesive",
  "resin",
  "lubricant",
  "cleaner",
  "paint",
  "fluid",
]);
const OF_FORMS = new Set(["block", "piece", "length", "strip", "bit", "sheet", "scrap", "chunk", "offcut"]);

const spoken = (token: Token): string => (DIALECT.has(plain(token.text)) ? plain(token.text) : token.norm);

/** The words as a material's name: singular head, speaker's own spelling of dialect words. */
export const nameOf = (tokens: readonly Token[]): string =>
  tokens
    .filter((token) => token.kind !== "mark")
    .map((token, at, all) => (at === all.length - 1 ? singular(spoken(token)) : spoken(token)))
    .join(" ");

const isModifier = (token: Token): boolean =>
  token.kind === "word" && KEEP.has(token.norm) && !DROP.has(token.norm);

/** Known modifiers before the head; an unknown word before a product's kind word is a name, not kept. */
const before = (
  tokens: readonly Token[],
  head: number,
  group: MaterialClass,
  known: (word: string) => boolean,
) => {
  const kept: Token[] = [];
  const brands: string[] = [];
  let at = head - 1;
  for (; at >= 0 && head - at <= MOST_BEFORE; at--) {
    const token = tokens[at];
    if (token === undefined) break;
    if (token.norm === "-") continue;
    if (isModifier(token)) kept.unshift(token);
    else if (
      token.kind === "word" &&
      MADE_UP.has(group) &&
      !known(token.norm) &&
      !DROP.has(token.norm) &&
      token.norm.length > 3
    )
      brands.unshift(token.text);
    else break;
  }
  return { kept, brands, from: at + 1 };
};

const ofWhole = (tokens: readonly Token[], from: number, kept: readonly Token[]): string => {
  const piece = tokens[from - 2];
  return kept.length === 0 &&
    tokens[from - 1]?.norm === "of" &&
    piece?.norm === "block" &&
    OF_FORMS.has(piece.norm)
    ? ` ${piece.norm}`
    : "";
};

/** The materials named in a text by a known kind word, whether or not they were used. */
export const materialsIn = (tokens: readonly Token[], known: (word: string) => boolean): MaterialRef[] => {
  const found: MaterialRef[] = [];
  const tools = new Set(
    TOOL_INDEX.all(tokens, false).flatMap(({ from, to }) =>
      Array.from({ length: to - from }, (_, at) => from + at),
    ),
  );
  const sayings = new Set(MATERIAL_SAYINGS.all(tokens, false).map(({ to }) => to - 1));
  for (let at = 0; at < tokens.length; at++) {
    const hits = MATERIAL_INDEX.at(tokens, at);
    if (hits.length === 0) continue;
    let best = hits.reduce((a, b) => (b.to > a.to ? b : a));
    for (let next = best.to; ; ) {
      const more = MATERIAL_INDEX.at(tokens, next)[0];
      if (more === undefined) break;
      best = { ...MATERIAL_INDEX.at(tokens, next).reduce((a, b) => (b.to > a.to ? b : a)), from: best.from };
      next = best.to;
    }
    const { kept, brands, from } = before(tokens, at, best.value, known);
    if (best.to - best.from === 1 && (tools.has(best.to - 1) || sayings.has(best.to - 1))) continue;
    const said = nameOf([...kept, ...tokens.slice(at, best.to)]) + ofWhole(tokens, from, kept);
    const name = ALIAS.get(said) ?? said;
    found.push({ from, to: best.to, head: best.to - 1, name, group: best.value, brands });
    at = best.to - 1;
  }
  return found;
};
