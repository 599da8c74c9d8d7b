import { existsSync, readFileSync } from "node:fs";
import { bucketOf } from "../../../nlp/read/certainty.ts";
import { read } from "../../../nlp/read/index.ts";
import type { Draft, Hemisphere } from "../../../shared/reading.ts";
import type { Field, RecordFields } from "../../../shared/record.ts";

type Note = {
  readonly text: string;
  readonly said: string;
  readonly zone: string;
  readonly hemisphere: Hemisphere;
  readonly records: readonly RecordFields[];
};

const BESIDE = new URL("../../gold/", import.meta.url);

const notesOf = (file: URL): Note[] =>
  existsSync(file)
    ? readFileSync(file, "utf8")
        .split("\n")
        .filter(Boolean)
        .map((line) => JSON.parse(line) as Note)
    : [];

/** Notes that the judges never learnt from: the part to count over, and the part held back to see how it does. */
const parts = (): { readonly learn: Note[]; readonly held: Note[] } => ({
  learn: COUNTED.flatMap((name) => notesOf(new URL(`${name}.jsonl`, BESIDE))),
  held: HELD.flatMap((name) => notesOf(new URL(`${name}.jsonl`, BESIDE))),
});
const COUNTED = ["notes-12", "notes-31"];
const HELD = ["notes-10"];

type Claim = {
  readonly field: Field;
  readonly bucket: string;
  readonly sure: number;
  readonly right: boolean;
};
const JUDGED: readonly Field[] = ["kind", "component", "action", "outcome", "date", "cost", "materials"];

const words = (text: string): Set<string> =>
  new Set(
    text
      .toLowerCase()
      .split(/[^a-z0-9]+/)
      .map((word) => word.replace(/s$/, "")),
  );
const likeMaterials = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length &&
  a.every((one) => b.some((other) => [...words(one)].some((word) => words(other).has(word))));
const plain = (value: unknown): unknown => (typeof value === "string" ? value.replace(/~/g, "") : value);

const isRight = (field: Field, fields: RecordFields, gold: RecordFields): boolean =>
  field === "materials"
    ? likeMaterials(fields.materials, gold.materials)
    : plain(fields[field]) === plain(gold[field]);

const likest = (draft: Draft, gold: readonly RecordFields[]): RecordFields | undefined =>
  gold
    .filter((each) => each.component === draft.fields.component)
    .map((each) => ({ each, score: JUDGED.filter((field) => isRight(field, draft.fields, each)).length }))
    .sort((a, b) => b.score - a.score)[0]?.each;

const claimsOf = (note: Note): Claim[] =>
  read(note.text, note).records.flatMap((draft) => {
    const gold = likest(draft, note.records);
    return JUDGED.flatMap((field): Claim[] => {
      const evidence = draft.evidence[field];
      if (evidence === undefined || (gold === undefined && field !== "component")) return [];
      return [
        {
          field,
          bucket: bucketOf(evidence.rule),
          sure: evidence.sure,
          right: gold !== undefined && isRight(field, draft.fields, gold),
        },
      ];
    });
  });

const share = (claims: readonly Claim[], prior: number, weight: number): number =>
  (claims.filter((claim) => claim.right).length + prior * weight) / (claims.length + weight);

const PRIOR_WEIGHT = 8;
const rounded = (value: number): number => Math.round(Math.min(0.98, value) * 100) / 100;

/** Share right by field and kind of rule on the part to learn from, drawn towards the field's own share where claims are few. */
export const calibrationTable = (): Record<string, Record<string, number>> => {
  const claims = parts().learn.flatMap(claimsOf);
  const table: Record<string, Record<string, number>> = {};
  for (const field of JUDGED) {
    const mine = claims.filter((claim) => claim.field === field);
    const whole = share(mine, 0.8, PRIOR_WEIGHT);
    const buckets = [...new Set(mine.map((claim) => claim.bucket))].sort();
    table[field] = Object.fromEntries([
      ...buckets.map(
        (bucket) =>
          [
            bucket,
            rounded(
              share(
                mine.filter((claim) => claim.bucket === bucket),
                whole,
                PRIOR_WEIGHT,
              ),
            ),
          ] as const,
      ),
      ["otherwise", rounded(whole)],
    ]);
  }
  return table;
};

type Row = { readonly sure: number; readonly right: number; readonly count: number };

/** Claims by tenths of sureness with the share that was right, on both parts. */
export const reliability = (): { readonly name: string; readonly rows: readonly Row[] }[] => {
  const { learn, held } = parts();
  const rows = (notes: readonly Note[]): Row[] => {
    const claims = notes.flatMap(claimsOf);
    return [0, 1, 2, 3, 4, 5, 6, 7, 8, 9].flatMap((tenth) => {
      const mine = claims.filter((claim) => Math.min(9, Math.floor(claim.sure * 10)) === tenth);
      return mine.length === 0
        ? []
        : [
            {
              sure: tenth / 10,
              right: mine.filter((claim) => claim.right).length / mine.length,
              count: mine.length,
            },
          ];
    });
  };
  return [
    { name: "the part learnt from", rows: rows(learn) },
    { name: "the part held back", rows: rows(held) },
  ];
};
