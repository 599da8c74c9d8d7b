/** A way of saying something, and the plain words for it. */
export type Rule = { readonly when: RegExp; readonly to: string };

/** The text by the first rule that fits it; undefined when none does. */
export const byRules = (text: string, rules: readonly Rule[]): string | undefined => {
  const rule = rules.find(({ when }) => when.test(text));
  return rule === undefined ? undefined : text.replace(rule.when, rule.to);
};

/** So many words at most, with no mark between them that ends a statement. */
export const upTo = (most: number): string =>
  `[^\\s.!?;,:]+(?:[.,]\\d+)?(?: [^\\s.!?;,:]+(?:[.,]\\d+)?){0,${most - 1}}?`;
