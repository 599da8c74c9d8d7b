const BLOCK = 8192;

let block = new Float64Array(BLOCK);
let taken = 0;

/**
 * So many zeros: a piece of a larger block, as many small arrays take longer to make than to fill. No piece is given out
 * twice; a block is held in memory as long as any of its pieces.
 */
export const zeros = (count: number): Float64Array => {
  if (taken + count > block.length) {
    block = new Float64Array(Math.max(BLOCK, count));
    taken = 0;
  }
  taken += count;
  return block.subarray(taken - count, taken);
};
