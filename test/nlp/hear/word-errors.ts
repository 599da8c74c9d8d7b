const SPELLINGS: Readonly<Record<string, string>> = {
  grey: "gray",
  tyre: "tire",
  tyres: "tires",
  colour: "color",
  metre: "meter",
  metres: "meters",
  neighbour: "neighbor",
  labour: "labor",
  aluminium: "aluminum",
  stabiliser: "stabilizer",
  moulding: "molding",
  alright: "all right",
};

/** Lower case, letters alone, one spelling a word: what counts as the same word. */
export const countedWords = (text: string): string[] =>
  text
    .toLowerCase()
    .replaceAll("'", "")
    .split(/[^a-z]+/)
    .filter((word) => word !== "")
    .flatMap((word) => (SPELLINGS[word] ?? word).split(" "));

/** Words to change from one list to the other (Levenshtein 1966). */
export const wordEdits = (said: readonly string[], heard: readonly string[]): number => {
  let row = Array.from({ length: heard.length + 1 }, (_, j) => j);
  for (const [i, word] of said.entries()) {
    const next = [i + 1];
    for (const [j, other] of heard.entries())
      next.push(
        Math.min((row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1, (row[j] ?? 0) + (word === other ? 0 : 1)),
      );
    row = next;
  }
  return row.at(-1) ?? 0;
};

export type Pair = { readonly said: string; readonly heard: string };

/** Edits over words said. */
export const wordErrorRate = (pairs: readonly Pair[]): number => {
  const counted = pairs.map(({ said, heard }) => [countedWords(said), countedWords(heard)] as const);
  const edits = counted.reduce((sum, [said, heard]) => sum + wordEdits(said, heard), 0);
  return (
    edits /
    Math.max(
      1,
      counted.reduce((sum, [said]) => sum + said.length, 0),
    )
  );
};
