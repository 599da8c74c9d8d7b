import { type Graph, int, ints, TYPE } from "./graph.ts";
import { type Parts, timesQuantised } from "./layers.ts";
import { quantised, transposed } from "./quantise.ts";

const TABLE = "decoder.embed_tokens.weight";
const TURNED = "words turned";

type Table = { readonly values: string; readonly scales: string };

/** The table as whole numbers with one scale a word, which serves both ways. */
const wholeTable = (g: Graph, { shape, weights }: Parts): Table => {
  const { vocabulary, width } = shape;
  const byWord = (): ReturnType<typeof quantised> =>
    quantised(transposed(weights(TABLE, [vocabulary, width]), vocabulary, width), width, vocabulary);
  return {
    values: g.constant(`${TABLE} int8`, [width, vocabulary], () => byWord().values),
    scales: g.constant(`${TABLE} scales`, [vocabulary], () => byWord().scales),
  };
};

const floatTable = (g: Graph, { shape, weights }: Parts): string =>
  g.constant(TABLE, [shape.vocabulary, shape.width], () => weights(TABLE, [shape.vocabulary, shape.width]));

/** The table turned over, once for the whole graph. */
export const turnedTable = (root: Graph, parts: Parts): void => {
  const table = parts.words === "fp32" ? floatTable(root, parts) : wholeTable(root, parts).values;
  root.named("Transpose", [table], [TURNED], [ints("perm", [1, 0])]);
};

/** The words given as `input_ids`, each as a row of numbers. */
export const embedded = (g: Graph, parts: Parts): string => {
  const row = (table: string): string => g.op("Gather", [table, "input_ids"], [int("axis", 0)]);
  if (parts.words === "fp32") return row(floatTable(g, parts));
  const scales = g.op("Unsqueeze", [row(wholeTable(g, parts).scales), g.indices(2)]);
  return g.op("Mul", [g.op("Cast", [row(TURNED)], [int("to", TYPE.float)]), scales]);
};

/** How well each word of the table would follow. */
export const wordScores = (g: Graph, parts: Parts, x: string): string => {
  if (parts.words === "fp32") return g.op("MatMul", [x, TURNED]);
  const { values, scales } = wholeTable(g, parts);
  return timesQuantised(g, x, values, scales);
};
