/** A pure function of a text that keeps what it worked out; it forgets all of it once it has kept for so many texts. */
export const remembered = <T>(work: (text: string) => T, most: number): ((text: string) => T) => {
  const kept = new Map<string, T>();
  return (text) => {
    const known = kept.get(text);
    if (known !== undefined) return known;
    const value = work(text);
    if (kept.size >= most) kept.clear();
    kept.set(text, value);
    return value;
  };
};
