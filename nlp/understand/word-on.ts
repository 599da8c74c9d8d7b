import type { Draft, Evidence, Moment, Span } from "../../shared/reading.ts";
import { type ComponentId, componentName } from "../../shared/vocabulary.ts";
import { placesSaid } from "../ask/places-said.ts";
import { topicOf } from "../ask/topic.ts";
import { plain } from "../correct/pieces.ts";
import { read } from "../read/index.ts";
import { outcomeIn } from "./verdict.ts";

const MOST_WORDS = 18;
/** The same, where it is heard which work is meant. */
const MOST_WORDS_HEARD = 35;
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

const earlier = ({ start, end }: Span, by: number): Span => ({
  start: Math.max(0, start - by),
  end: end - by,
});

const inText = ({ spans, ...evidence }: Evidence, by: number): Evidence => ({
  ...evidence,
  spans: spans.filter(({ end }) => end > by).map((span) => earlier(span, by)),
});

/** What is put before such a word so that it reads as one, in the order in which it is tried. */
const LEADS: readonly ((thing: string) => string)[] = [
  (thing) => `the ${thing} `,
  (thing) => `looked at the ${thing}: `,
  (thing) => `${thing}: `,
];

const readBehind = (
  lead: string,
  text: string,
  component: ComponentId,
  moment: Moment,
): Draft | undefined => {
  const [draft, ...others] = read(lead + text, moment).records;
  if (draft === undefined || others.length > 0 || draft.fields.component !== component) return undefined;
  const { fields, evidence, span } = draft;
  if (fields.kind !== "check" && fields.kind !== "fault") return undefined;
  const by = lead.length;
  const isSaid = fields.fault !== null && text.toLowerCase().includes(fields.fault.toLowerCase());
  const told = { ...fields, fault: isSaid ? fields.fault : null };
  return {
    ...draft,
    fields: fields.kind === "check" ? told : { ...told, kind: "check", action: "inspect", outcome: "failed" },
    evidence: Object.fromEntries(Object.entries(evidence).map(([field, each]) => [field, inText(each, by)])),
    span: earlier(span, by),
  };
};

/**
 * A word on work that is known, whatever it names: "dry as a bone up there over the bunk" of the roof seam. It is read with
 * the thing named before it; trouble told so is that the work did not hold.
 */
export const wordOnWork = (text: string, component: ComponentId, moment: Moment): Draft | undefined => {
  if (text.includes("?") || ELSE.test(plain(text)) || text.split(/\s+/).length > MOST_WORDS_HEARD)
    return undefined;
  for (const lead of LEADS) {
    const draft = readBehind(lead(componentName(component)), text, component, moment);
    if (draft !== undefined) return draft;
  }
  return undefined;
};
