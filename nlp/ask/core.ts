const JOINT = "(?:so|and|but|now|then|well|anyway|okay|ok|um|uh|er|like|right|(?:tell|remind) me|to know)";
const ASKS =
  "(?:what (?:did|have|has|do|does|is|was|were|all did|else)|whats|how (?:much|many|often|long|many times)(?: \\w+){0,3}? (?:did|have|has|is|was|do)|how many|when (?:did|was|were|have|has|is)|who (?:did|was|put|fixed|fitted|has|is)|which (?:\\w+ ){0,4}?(?:did|has|have|held|lasted|was|is)|(?:did|have) (?:i|we) ever|(?:is|are|has|have) (?:the|that|those|my) \\w+)";
const CORE = new RegExp(`\\b${JOINT},? (?=${ASKS}\\b)`, "gi");
const ASKS_FIRST =
  /^\W*(?:(?:so|and|but|oh|ok|okay|hey|hi|now|um|uh|well|right)\W+)*(?:what|whats|how|when|who|which|where|why|did|do|does|have|has|is|are|was|were|can|could|tell|remind|show)\b/i;

/** As many words before a question are why it is asked. */
const LEAD = 5;

/** The question at the end of long talk without marks, as to why it is asked: "the man wants a figure so um what did the heater cost me". */
export const coreOf = (text: string): string | undefined => {
  const plain = text.replace(/['’]/g, " ");
  if (plain.length !== text.length || ASKS_FIRST.test(text)) return undefined;
  const [found] = [...plain.matchAll(CORE)].filter(
    ({ index }) => text.slice(0, index).trim().split(/\s+/).length >= LEAD,
  );
  return found === undefined ? undefined : text.slice(found.index + found[0].length);
};
