/** Numbers in [0, 1) from a seed: the mulberry32 generator. */
export type Random = () => number;

export const seeded = (seed: number): Random => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
};

export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

export const pick = <T>(random: Random, from: readonly T[], weights?: readonly number[]): T => {
  const total = from.reduce((sum, _, index) => sum + (weights?.[index] ?? 1), 0);
  let left = random() * total;
  const found = from.find((_, index) => {
    left -= weights?.[index] ?? 1;
    return left < 0;
  });
  const chosen = found ?? from.at(-1);
  if (chosen === undefined) throw new Error("Nothing to pick from.");
  return chosen;
};
