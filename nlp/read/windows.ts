type Starts = { readonly from: number };

const lowerBound = (refs: readonly Starts[], from: number): number => {
  let low = 0;
  let high = refs.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((refs[middle]?.from ?? 0) < from) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** Of refs sorted by where they start, those that start from `from` on and before `to`; keeps the work on long notes linear. */
export const startingIn = <T extends Starts>(refs: readonly T[], from: number, to: number): readonly T[] =>
  refs.slice(lowerBound(refs, from), lowerBound(refs, to));

/** No phrase is longer than this many tokens. */
const LONGEST = 40;

/** Those that may touch the tokens `from` to `to`. */
export const touching = <T extends Starts>(refs: readonly T[], from: number, to: number): readonly T[] =>
  startingIn(refs, from - LONGEST, to + 1);
