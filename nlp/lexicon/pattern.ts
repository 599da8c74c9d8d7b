import classData from "./data/classes.json" with { type: "json" };
import { inflect, type VerbForm } from "./inflect.ts";
import type { Token } from "./tokens.ts";

/**
 * Patterns over words, as the data files write them:
 * `seal` the word or its plural; `seal~` any form of the verb, with "re" before it too; `a|b` one of several;
 * `a?` may be missing; `..` up to two words between, `...` up to six; `#` a number; `_` any word;
 * `%name` any word of a class (data/classes.json).
 * Words between never cross the end of a sentence.
 */
export type Pattern<T> = { readonly parts: readonly Part[]; readonly value: T; readonly source: string };

type Part = {
  readonly words: ReadonlySet<string>;
  readonly forms: ReadonlyMap<string, readonly VerbForm[]>;
  readonly any: "word" | "number" | null;
  readonly optional: boolean;
  /** Most words between the part before and this one. */
  readonly gap: number;
};

export type Hit<T> = {
  readonly from: number;
  /** Index after the last token. */
  readonly to: number;
  readonly value: T;
  readonly source: string;
  /** The first verb of the pattern: where it stands and which forms it may be. */
  readonly verb: { readonly at: number; readonly forms: readonly VerbForm[] } | null;
};

const CLASSES: ReadonlyMap<string, readonly string[]> = new Map(Object.entries(classData.classes));
const expand = (alternative: string): readonly string[] =>
  alternative.startsWith("%") ? (CLASSES.get(alternative.slice(1)) ?? []) : [alternative];

/** Verbs whose form with "re" is another word. */
const NO_RE = new Set([
  "set",
  "turn",
  "move",
  "pair",
  "place",
  "call",
  "port",
  "cover",
  "lay",
  "lease",
  "tire",
  "act",
  "serve",
  "main",
  "start",
  "do",
  "come",
  "go",
  "get",
  "be",
  "have",
  "cent",
  "mark",
  "leave",
  "lie",
  "store",
  "sort",
  "fuse",
  "tread",
  "ally",
  "view",
  "sent",
  "plug",
  "spring",
  "mind",
  "put",
  "quest",
  "press",
  "treat",
  "sign",
  "lock",
  "tail",
  "cap",
]);

const verbForms = (base: string): [string, VerbForm][] =>
  inflect(base).flatMap(({ text, form }): [string, VerbForm][] =>
    NO_RE.has(base)
      ? [[text, form]]
      : [
          [text, form],
          [`re${text}`, form],
        ],
  );

const partOf = (written: string, gap: number): Part => {
  const optional = written.endsWith("?");
  const body = optional ? written.slice(0, -1) : written;
  const words = new Set<string>();
  const forms = new Map<string, VerbForm[]>();
  for (const alternative of body.split("|").flatMap(expand)) {
    if (alternative.endsWith("~"))
      for (const [text, form] of verbForms(alternative.slice(0, -1)))
        forms.set(text, [...(forms.get(text) ?? []), form]);
    else words.add(alternative.replaceAll("-", ""));
  }
  return { words, forms, any: body === "_" ? "word" : body === "#" ? "number" : null, optional, gap };
};

const GAPS: Record<string, number> = { "..": 2, "...": 6 };

export const compile = <T>(source: string, value: T): Pattern<T> => {
  const parts: Part[] = [];
  let gap = 0;
  for (const written of source.split(/\s+/)) {
    const width = GAPS[written];
    if (width !== undefined) gap = width;
    else {
      parts.push(partOf(written, gap));
      gap = 0;
    }
  }
  return { parts, value, source };
};

const STOPS = new Set([".", "!", "?", ";"]);
/** Words that begin something new: a gap does not reach over them. */
const BREAKS = new Set([
  "and",
  "but",
  "so",
  "then",
  "i",
  "we",
  "he",
  "she",
  "they",
  "because",
  "which",
  "im",
  "ive",
]);
const isStop = (token: Token): boolean => token.kind === "mark" && STOPS.has(token.norm);
const NUMBER_WORDS = new Set(
  "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen eighteen twenty thirty forty fifty sixty seventy eighty ninety hundred a an couple few several".split(
    " ",
  ),
);
/** Whether a token may stand for a part of a pattern. */
export const accepts = (part: Part, token: Token): boolean => {
  if (part.any === "number") return token.kind === "number" || NUMBER_WORDS.has(token.norm);
  if (part.any === "word") return token.kind === "word";
  return part.words.has(token.norm) || part.words.has(token.stem) || part.forms.has(token.norm);
};

type State = { readonly at: number; readonly verb: Hit<unknown>["verb"] };

/** Index of the next token that is no joining mark: "re-seal", "self, leveling". */
const skipMarks = (tokens: readonly Token[], at: number, marks: ReadonlySet<string>): number => {
  let next = at;
  while (tokens[next]?.kind === "mark" && marks.has(tokens[next]?.norm ?? "")) next++;
  return next;
};
const JOINING = new Set(["-", "/", "'"]);
const JOINING_OR_COMMA = new Set([...JOINING, ","]);

const advance = (
  tokens: readonly Token[],
  part: Part,
  state: State,
  marks: ReadonlySet<string>,
): State | undefined => {
  let at = skipMarks(tokens, state.at, marks);
  for (let skipped = 0; skipped <= part.gap; skipped++) {
    const token = tokens[at];
    if (token === undefined || isStop(token)) return undefined;
    if (accepts(part, token)) {
      const forms = part.forms.get(token.norm);
      return { at: at + 1, verb: state.verb ?? (forms ? { at, forms } : null) };
    }
    if (BREAKS.has(token.norm) || (token.kind === "mark" && !marks.has(token.norm))) return undefined;
    at = skipMarks(tokens, at + 1, marks);
  }
  return undefined;
};

const match = <T>(
  tokens: readonly Token[],
  pattern: Pattern<T>,
  from: number,
  marks: ReadonlySet<string>,
): Hit<T> | undefined => {
  let state: State = { at: from, verb: null };
  for (const part of pattern.parts) {
    const next = advance(tokens, part, state, marks);
    if (next === undefined && !part.optional) return undefined;
    state = next ?? state;
  }
  return { from, to: state.at, value: pattern.value, source: pattern.source, verb: state.verb };
};

/** Whether the token after the first can be the second part of a pattern, told cheaply. */
const mayGoOn = (pattern: Pattern<unknown>, next: Token | undefined): boolean => {
  const [first, second] = pattern.parts;
  if (second === undefined || second.gap > 0 || second.optional || first?.optional === true) return true;
  return next !== undefined && (next.kind === "mark" || accepts(second, next));
};

/** Patterns by the words they may begin with, so that a text is read in one pass. */
export class PatternIndex<T> {
  readonly #byWord = new Map<string, Pattern<T>[]>();
  readonly #loose: Pattern<T>[] = [];
  readonly #beginning = new Map<string, readonly Pattern<T>[]>();
  readonly #marks: ReadonlySet<string>;

  /** With `commas`, a comma may stand between the words of a pattern. */
  constructor(patterns: readonly Pattern<T>[], options: { readonly commas?: boolean } = {}) {
    this.#marks = options.commas === true ? JOINING_OR_COMMA : JOINING;
    for (const pattern of patterns) this.#add(pattern);
  }

  #add(pattern: Pattern<T>): void {
    const first = pattern.parts[0];
    if (first === undefined) return;
    if (first.any !== null) this.#loose.push(pattern);
    for (const word of new Set([...first.words, ...first.forms.keys()]))
      this.#byWord.set(word, [...(this.#byWord.get(word) ?? []), pattern]);
  }

  get words(): IterableIterator<string> {
    return this.#byWord.keys();
  }

  /** Every match that starts at a token. */
  at(tokens: readonly Token[], from: number): Hit<T>[] {
    const token = tokens[from];
    if (token === undefined) return [];
    const hits: Hit<T>[] = [];
    for (const pattern of this.#candidates(token)) {
      if (!mayGoOn(pattern, tokens[from + 1])) continue;
      const hit = match(tokens, pattern, from, this.#marks);
      if (hit !== undefined) hits.push(hit);
    }
    return hits;
  }

  #candidates({ norm, stem }: Token): readonly Pattern<T>[] {
    const own = this.#byWord.get(norm);
    const ofStem = stem === norm ? undefined : this.#byWord.get(stem);
    if (own === undefined && ofStem === undefined) return this.#loose;
    const key = own === undefined ? stem : ofStem === undefined ? norm : `${norm} ${stem}`;
    const known = this.#beginning.get(key);
    if (known !== undefined) return known;
    const all = [...new Set([...(own ?? []), ...(ofStem ?? []), ...this.#loose])];
    this.#beginning.set(key, all);
    return all;
  }

  /** The longest match at each place, from left to right; `overlap` false skips what a match covers. */
  all(tokens: readonly Token[], overlap = true): Hit<T>[] {
    const found: Hit<T>[] = [];
    for (let at = 0; at < tokens.length; at++) {
      const hits = this.at(tokens, at);
      if (hits.length === 0) continue;
      const best = hits.reduce((a, b) => (b.to > a.to ? b : a));
      found.push(best);
      if (!overlap) at = best.to - 1;
    }
    return found;
  }
}
