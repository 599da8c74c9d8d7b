/** Whole numbers of 8 bits with one scale a column, symmetric about zero. */
export type Quantised = { readonly values: Int8Array; readonly scales: Float32Array };

const MOST = 127;

/** `weights` as [rows, columns]: each column is scaled so that its largest value becomes 127. */
export const quantised = (weights: Float32Array, rows: number, columns: number): Quantised => {
  const scales = new Float32Array(columns);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      scales[column] = Math.max(scales[column] ?? 0, Math.abs(weights[row * columns + column] ?? 0) / MOST);
  const values = Int8Array.from(weights, (weight, i) => Math.round(weight / (scales[i % columns] || 1)));
  return { values, scales };
};

/** [rows, columns] to [columns, rows]. */
export const transposed = (weights: Float32Array, rows: number, columns: number): Float32Array => {
  const out = new Float32Array(weights.length);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      out[column * rows + row] = weights[row * columns + column] ?? 0;
  return out;
};
