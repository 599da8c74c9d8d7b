import { z } from "zod";

/** What `learn_tokens.py` writes. */
export const tokenTableSchema = z.object({ merges: z.array(z.string()), specials: z.array(z.string()) });
export type TokenTable = z.infer<typeof tokenTableSchema>;

const range = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, i) => from + i);
const PRINTABLE = [...range(33, 127), ...range(161, 173), ...range(174, 256)];
/** The stand-ins for bytes that byte-level tokenizers use: themselves where printable, else from U+0100 on. */
const BYTES = [...PRINTABLE, ...range(256, 512 - PRINTABLE.length)].map((code) => String.fromCharCode(code));

export type TokenIds = {
  readonly start: number;
  readonly previous: number;
  readonly plain: number;
  readonly end: number;
};

const pieces = ({ merges }: TokenTable): string[] => [
  ...BYTES,
  ...merges.map((pair) => pair.replace(" ", "")),
];
const idOf = (table: TokenTable, name: string): number => {
  const at = table.specials.indexOf(name);
  if (at < 0) throw new Error(`The token table has no ${name}.`);
  return pieces(table).length + at;
};

export const tokenIds = (table: TokenTable): TokenIds => ({
  start: idOf(table, "<|startoftranscript|>"),
  previous: idOf(table, "<|startofprev|>"),
  plain: idOf(table, "<|notimestamps|>"),
  end: idOf(table, "<|endoftext|>"),
});

/** The vocabulary's size, specials included. */
export const tableSize = (table: TokenTable): number => pieces(table).length + table.specials.length;

/** `tokenizer.json` as the tokenizers of the hub are written. */
export const tokenizerFile = (table: TokenTable): object => {
  const base = pieces(table);
  const byteLevel = { type: "ByteLevel", add_prefix_space: false, trim_offsets: true, use_regex: true };
  const plain = { single_word: false, lstrip: false, rstrip: false, normalized: false, special: true };
  return {
    version: "1.0",
    truncation: null,
    padding: null,
    added_tokens: table.specials.map((content, i) => ({ id: base.length + i, content, ...plain })),
    normalizer: null,
    pre_tokenizer: byteLevel,
    post_processor: null,
    decoder: byteLevel,
    model: {
      type: "BPE",
      dropout: null,
      unk_token: "<|endoftext|>",
      continuing_subword_prefix: "",
      end_of_word_suffix: "",
      fuse_unk: false,
      vocab: Object.fromEntries(base.map((piece, i) => [piece, i])),
      merges: table.merges,
    },
  };
};
