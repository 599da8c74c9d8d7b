/** A count as a word that counts near it share. */
export const sizeOf = (count: number): string =>
  count <= 3 ? String(count) : count <= 6 ? "few" : count <= 12 ? "some" : "many";
