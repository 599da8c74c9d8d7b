/** A copy of an object without some of its fields. */
export const without = <T extends object, K extends keyof T & string>(
  whole: T,
  ...fields: readonly K[]
): Omit<T, K> => {
  const dropped = new Set<string>(fields);
  return Object.fromEntries(Object.entries(whole).filter(([name]) => !dropped.has(name))) as Omit<T, K>;
};
