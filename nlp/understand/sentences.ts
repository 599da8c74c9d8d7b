import type { Moment } from "../../shared/reading.ts";
import { asksPlainly, DOUBTED, isQuestion } from "../ask/is-question.ts";
import { plainQuestion } from "../ask/plain-question.ts";
import { topicOf } from "../ask/topic.ts";

const ENDS = /(?<=[?!\n])\s*|(?<=\.)\s+(?=\S)/;

/** A question that comes late in a sentence without marks, on plain words. */
const LATE =
  /\b(?:when (?:did|was|were|have) (?:i|we|it|that|they)|what (?:did|have) (?:i|we) (?:use|put|do|spend|pay)|how many times (?:has|have|did)|how (?:much|long|often) (?:did|has|have|is)|(?:did|have) (?:i|we) ever|(?:is|are|has|have|did|does|do) (?:it|they|that) (?:still|holding|held|ever|last|hold|been|done)|whats (?:still )?(?:open|left to do)|how(?:s| is| are) (?:it|they|that) (?:doing|holding|looking)|who did (?:it|that)|(?:so|and|but) (?:do|should|must) (?:i|we) (?:still |also |really )?(?:need|have|want|bring|buy|get|pick|order|fetch|fix|owe)|(?:so|and|but) (?:is|are) there (?:anything|something|any|still))\b/i;

export type Split = {
  /** The part that asks; null when nothing does. */
  readonly asks: string | null;
  /** The part that tells, before or after it. */
  readonly tells: string | null;
};

const nullIfEmpty = (text: string): string | null => (text.trim() === "" ? null : text.trim());

const TOO_LONG = 45;

const lateIn = (text: string): Split | undefined => {
  const words = text.split(/\s+/).length;
  const late = LATE.exec(text.replace(/['’]/g, " "));
  if (late === null || words > TOO_LONG) return undefined;
  return {
    asks: text.slice(late.index),
    tells: nullIfEmpty(text.slice(0, late.index).replace(/[\s,;:-]+(?:and|so|but|oh)?\s*$/i, "")),
  };
};

/** "Greased the hubs, when did I last do them?": work told before the comma is a note. */
const atComma = (sentence: string, moment: Moment): Split => {
  if (DOUBTED.test(plainQuestion(sentence).replace(/ ?\?/g, ""))) return { asks: sentence, tells: null };
  const comma = sentence.lastIndexOf(", ");
  const before = comma < 0 ? "" : sentence.slice(0, comma);
  const after = sentence.slice(comma + 2);
  const tellsWork =
    topicOf(before).actions.length > 0 &&
    !/^\W*(?:the|that|my|those|this|our|did|have|has|when|what|which|how|is|are|was)\b/i.test(before);
  return tellsWork && asksPlainly(after, moment)
    ? { asks: after, tells: before.trim() }
    : { asks: sentence, tells: null };
};

/** Parts what a message asks from what it tells, sentence by sentence. */
export const splitQuestion = (text: string, moment: Moment): Split => {
  const sentences = text.split(ENDS).filter((sentence) => sentence.trim() !== "");
  const asks = sentences.filter((sentence) => isQuestion(sentence, moment));
  const asking =
    asks.length < sentences.length ? asks.filter((sentence) => asksPlainly(sentence, moment)) : asks;
  if (asking.length === 0) return lateIn(text) ?? { asks: null, tells: text };
  const [only] = sentences;
  if (sentences.length === 1 && only !== undefined) return atComma(only, moment);
  const telling = sentences.filter((sentence) => !asking.includes(sentence));
  return { asks: asking.join(" "), tells: nullIfEmpty(telling.join(" ")) };
};
