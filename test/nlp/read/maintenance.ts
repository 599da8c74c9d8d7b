import { existsSync, readFileSync } from "node:fs";
import nlp from "compromise";
import { actsIn } from "../../../nlp/lexicon/acts.ts";
import { componentsIn } from "../../../nlp/lexicon/components.ts";
import { FAULT_INDEX, SPELLER } from "../../../nlp/lexicon/lexicon.ts";
import { materialsIn } from "../../../nlp/lexicon/materials.ts";
import { tokenize } from "../../../nlp/lexicon/spelling.ts";

/**
 * Annotated maintenance texts by others: MaintIE (nlp-tlp/maintie, LREC-COLING 2024, MIT) and the work orders of
 * nlp-tlp/mwo2kg-and-echidna (Apache-2.0), read in place from ../shared/checks.
 */
const CHECKS = new URL("../../../../shared/checks/", import.meta.url);
const MAINTIE = new URL("maintie/dev.jsonl", CHECKS);
const WORK_ORDERS = new URL("mwo2kg/dev.txt", CHECKS);
export const HAS_MAINTIE = existsSync(MAINTIE);
export const HAS_WORK_ORDERS = existsSync(WORK_ORDERS);

export type Sort = "activity" | "trouble" | "object";
type Marked = { readonly sort: Sort; readonly start: number; readonly end: number };
export type Sentence = { readonly text: string; readonly marks: readonly Marked[] };
export type Finder = (text: string) => readonly Marked[];

type Entity = { readonly start: number; readonly end: number; readonly type: string };
const SORTS: readonly (readonly [RegExp, Sort])[] = [
  [/^Activity/, "activity"],
  [/^(?:State|Process)/, "trouble"],
  [/^PhysicalObject/, "object"],
];

const joined = (tokens: readonly string[]) => {
  let text = "";
  const starts = tokens.map((token) => {
    const start = text.length;
    text += `${token} `;
    return start;
  });
  return { text, starts };
};

const outermost = (marks: readonly Marked[]): Marked[] =>
  marks.filter(
    (mark) =>
      !marks.some(
        (other) =>
          other !== mark &&
          other.sort === mark.sort &&
          other.start <= mark.start &&
          other.end >= mark.end &&
          other.end - other.start > mark.end - mark.start,
      ),
  );

export const maintieSentences = (): Sentence[] =>
  readFileSync(MAINTIE, "utf8")
    .split("\n")
    .filter(Boolean)
    .map((line) => {
      const { tokens, entities } = JSON.parse(line) as { tokens: string[]; entities: Entity[] };
      const { text, starts } = joined(tokens);
      const marks = entities.flatMap((entity): Marked[] => {
        const sort = SORTS.find(([pattern]) => pattern.test(entity.type))?.[1];
        const last = entity.end - 1;
        return sort === undefined
          ? []
          : [
              {
                sort,
                start: starts[entity.start] ?? 0,
                end: (starts[last] ?? 0) + (tokens[last]?.length ?? 0),
              },
            ];
      });
      return { text, marks: outermost(marks) };
    });

const COLUMNS: Readonly<Record<string, Sort>> = {
  Activity: "activity",
  Observation: "trouble",
  Item: "object",
};

export const workOrderSentences = (): Sentence[] =>
  readFileSync(WORK_ORDERS, "utf8")
    .split(/\n\s*\n/)
    .filter((block) => block.trim() !== "")
    .map((block) => {
      const rows = block
        .trim()
        .split("\n")
        .map((row) => row.split(" "));
      const { text, starts } = joined(rows.map(([word = ""]) => word));
      const marks: { sort: Sort; start: number; end: number }[] = [];
      rows.forEach(([word = "", tag = "O"], at) => {
        const sort = COLUMNS[tag.slice(2)];
        const [start, end] = [starts[at] ?? 0, (starts[at] ?? 0) + word.length];
        const last = marks.at(-1);
        if (sort === undefined) return;
        if (tag.startsWith("I-") && last?.sort === sort) last.end = end;
        else marks.push({ sort, start, end });
      });
      return { text, marks };
    });

/** The reader's own recognisers, whatever the tense. */
export const ours: Finder = (text) => {
  const tokens = tokenize(text, SPELLER);
  const span =
    (sort: Sort) =>
    ({ from, to }: { readonly from: number; readonly to: number }): Marked => ({
      sort,
      start: tokens[from]?.start ?? 0,
      end: tokens[to - 1]?.end ?? 0,
    });
  const verbs = actsIn(tokens).map(({ from, to, verb }) =>
    verb === null ? { from, to } : { from: verb.at, to: Math.min(to, verb.at + 1) },
  );
  const things = [...componentsIn(tokens), ...materialsIn(tokens, (word) => SPELLER.knows(word))];
  const wide = things.filter(
    (a) => !things.some((b) => b !== a && b.from <= a.from && b.to >= a.to && b.to - b.from > a.to - a.from),
  );
  return [
    ...verbs.map(span("activity")),
    ...FAULT_INDEX.all(tokens, false).map(span("trouble")),
    ...wide.map(span("object")),
  ];
};

/** compromise alone: verbs as activities, nouns as objects, negatives and adjectives as trouble. */
export const compromiseAlone: Finder = (text) => {
  const doc = nlp(text);
  const of = (sort: Sort, match: string): Marked[] =>
    (doc.match(match).json({ offset: true }) as { offset: { start: number; length: number } }[]).map(
      ({ offset }) => ({ sort, start: offset.start, end: offset.start + offset.length }),
    );
  return [
    ...of("activity", "#Verb+"),
    ...of("trouble", "(#Negative|#Adjective)+"),
    ...of("object", "#Noun+"),
  ];
};

export type Figures = { readonly touching: number; readonly exact: number };
const meets = (a: Marked, b: Marked): boolean => a.start < b.end && b.start < a.end;
const same = (a: Marked, b: Marked): boolean => a.start === b.start && a.end === b.end;
const f1 = (hit: number, wanted: number, found: number): number =>
  wanted + found === 0 ? 1 : (2 * hit) / (wanted + found);

/** F1 of finding one sort of span: any overlap, and exactly the same characters. */
export const figuresOf = (sentences: readonly Sentence[], sort: Sort, find: Finder): Figures => {
  const total = { wanted: 0, found: 0, touched: 0, covered: 0, exact: 0 };
  for (const { text, marks } of sentences) {
    const wanted = marks.filter((mark) => mark.sort === sort);
    const found = find(text).filter((mark) => mark.sort === sort);
    total.wanted += wanted.length;
    total.found += found.length;
    total.touched += wanted.filter((mark) => found.some((other) => meets(mark, other))).length;
    total.covered += found.filter((mark) => wanted.some((other) => meets(mark, other))).length;
    total.exact += wanted.filter((mark) => found.some((other) => same(mark, other))).length;
  }
  const [recall, precision] = [
    total.touched / Math.max(1, total.wanted),
    total.covered / Math.max(1, total.found),
  ];
  return {
    touching: recall + precision === 0 ? 0 : (2 * recall * precision) / (recall + precision),
    exact: f1(total.exact, total.wanted, total.found),
  };
};
