/** Signs with a row of signed bytes each, all of one width. */
export type SignBytes = {
  readonly width: number;
  readonly rows: ReadonlyMap<string, number>;
  readonly bytes: Int8Array;
};

/** Signs, one a line, and their rows one after the other in base 64, unpacked. */
export const unpacked = (signs: string, base64: string, width: number): SignBytes => {
  const { buffer, byteOffset, length } = Buffer.from(base64, "base64");
  const names = signs === "" ? [] : signs.split("\n");
  return {
    width,
    rows: new Map(names.map((sign, at) => [sign, at * width])),
    bytes: new Int8Array(buffer, byteOffset, length),
  };
};

/** The rows of the signs seen added up, one as often as it was seen; signs that were never met add nothing. */
export const addedUp = ({ width, rows, bytes }: SignBytes, seen: readonly string[]): Int32Array => {
  const sums = new Int32Array(width);
  for (const sign of seen) {
    const row = rows.get(sign);
    if (row === undefined) continue;
    for (let at = 0; at < width; at++) sums[at] = (sums[at] as number) + (bytes[row + at] as number);
  }
  return sums;
};

/** The rows of signs added up from the first on; a place without a sign, or with one never met, adds nothing. */
export const runningSums = (
  { width, rows, bytes }: SignBytes,
  signs: readonly (string | undefined)[],
): Int32Array => {
  const sums = new Int32Array((signs.length + 1) * width);
  for (const [nth, sign] of signs.entries()) {
    const [before, after] = [nth * width, (nth + 1) * width];
    const row = sign === undefined ? undefined : rows.get(sign);
    for (let at = 0; at < width; at++)
      sums[after + at] =
        (sums[before + at] as number) + (row === undefined ? 0 : (bytes[row + at] as number));
  }
  return sums;
};

/** Adds to `into` what the signs `from` to `to` (exclusive) add up to. */
export const addStretch = (into: Int32Array, sums: Int32Array, from: number, to: number): void => {
  const width = into.length;
  for (let at = 0; at < width; at++)
    into[at] = (into[at] as number) + (sums[to * width + at] as number) - (sums[from * width + at] as number);
};

/** Two tables of signs, looked up at once: for each sign where its row starts in either, -1 where it has none. */
export type TwoTables = {
  readonly numbers: ReadonlyMap<string, number>;
  readonly starts: Int32Array;
  readonly tables: readonly [SignBytes, SignBytes];
};

export const together = (first: SignBytes, second: SignBytes): TwoTables => {
  const signs = [...new Set([...first.rows.keys(), ...second.rows.keys()])];
  return {
    numbers: new Map(signs.map((sign, at) => [sign, at])),
    starts: Int32Array.from(
      signs.flatMap((sign) => [first.rows.get(sign) ?? -1, second.rows.get(sign) ?? -1]),
    ),
    tables: [first, second],
  };
};

const addRow = (sums: Int32Array, bytes: Int8Array, start: number): void => {
  if (start < 0) return;
  for (let at = 0; at < sums.length; at++) sums[at] = (sums[at] as number) + (bytes[start + at] as number);
};

/** As `addedUp`, for both tables at once. */
export const addedUpTogether = (
  { numbers, starts, tables: [first, second] }: TwoTables,
  seen: readonly string[],
): [Int32Array, Int32Array] => {
  const sums: [Int32Array, Int32Array] = [new Int32Array(first.width), new Int32Array(second.width)];
  for (const sign of seen) {
    const number = numbers.get(sign);
    if (number === undefined) continue;
    addRow(sums[0], first.bytes, starts[2 * number] as number);
    addRow(sums[1], second.bytes, starts[2 * number + 1] as number);
  }
  return sums;
};
