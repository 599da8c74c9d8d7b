import type { Candidate } from "../../../../nlp/read/candidate.ts";
import { type Scan, type Stretch, stretchOf } from "../../../../nlp/read/scan.ts";
import type { KnownNote, KnownRecord } from "./notes.ts";

/** A known record and the words that tell it. */
export type Anchored = Stretch & { readonly record: KnownRecord };

export const anchoredIn = (note: KnownNote, tokens: Scan["tokens"]): Anchored[] =>
  note.records.map((record): Anchored => {
    const at = note.text.indexOf(record.anchor);
    return { ...stretchOf(tokens, at, at + record.anchor.length), record };
  });

const awayFrom = ({ from, to }: Stretch, at: number): number =>
  at < from ? from - at : at >= to ? at - to + 1 : 0;

/** The candidates that tell a known record, each another: those nearest to its words, of the same kind and thing. */
export const tellers = (all: readonly Candidate[], anchored: readonly Anchored[]): Set<Candidate> => {
  const pairs = anchored
    .flatMap((known) =>
      all
        .filter(({ kind, ref }) => kind === known.record.kind && ref.id === known.record.component)
        .map((each) => ({ each, known, away: awayFrom(known, each.telling.at) })),
    )
    .toSorted((a, b) => a.away - b.away || b.each.sureKind - a.each.sureKind);
  const found = new Set<Candidate>();
  const told = new Set<Anchored>();
  for (const { each, known } of pairs)
    if (!found.has(each) && !told.has(known)) {
      found.add(each);
      told.add(known);
    }
  return found;
};
