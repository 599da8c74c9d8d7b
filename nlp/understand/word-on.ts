import type { Draft, Moment } from "../../shared/reading.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { placesSaid } from "../ask/places-said.ts";
import { topicOf } from "../ask/topic.ts";
import { plain } from "../correct/pieces.ts";
import { outcomeIn } from "./verdict.ts";

const MOST_WORDS = 18;
/** Work, wishes and doubts are no word on how something does. */
const ELSE =
  /\b(?:will|gonna|going to|need|needs|must|should|could|would|if|whether|maybe|hope|hoping|wonder|want|plan|planning|tomorrow|next|buy|order)\b/;

/** A word on how a known thing does, in phrases that read as no record of their own: "the tread is firm after a whole winter". */
export const wordOn = (text: string, component: ComponentId, moment: Moment): Draft | undefined => {
  const words = plain(text);
  if (words.split(" ").length > MOST_WORDS || ELSE.test(words)) return undefined;
  const outcome = outcomeIn(words);
  const { actions } = topicOf(text);
  if (outcome === undefined || outcome === "later") return undefined;
  if (/\b(?:i|we|ive|weve)\b/.test(words) && actions.length > 0) return undefined;
  const sure = { spans: [], sure: 0.6, rule: "word-on-known" };
  return {
    fields: {
      kind: "check",
      component,
      where: placesSaid(text),
      action: "inspect",
      materials: [],
      date: moment.said.slice(0, 10),
      outcome,
      exposure: [],
      cost: null,
      fault: null,
      due: null,
    },
    evidence: { component: sure, outcome: sure },
    span: { start: 0, end: text.length },
    brands: [],
    doneBy: null,
  };
};
