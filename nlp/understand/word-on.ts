import type { Draft, Moment } from "../../shared/reading.ts";
import { type ComponentId, componentName } from "../../shared/vocabulary.ts";
import { placesSaid } from "../ask/places-said.ts";
import { topicOf } from "../ask/topic.ts";
import { ownsAtOnce, plain } from "../correct/pieces.ts";
import { oneBehind } from "./behind-lead.ts";
import { outcomeIn } from "./verdict.ts";

const MOST_WORDS = 18;
/** The same, where it is heard which work is meant. */
const MOST_WORDS_HEARD = 60;
/** Work, wishes and doubts are no word on how something does. */
const ELSE =
  /\b(?:will|gonna|going to|need|needs|must|should|could|would|if|whether|maybe|hope|hoping|wonder|want|plan|planning|tomorrow|next|buy|order)\b/;

/** A word on how a known thing does, in phrases that read as no record of their own: "the tread is firm after a whole winter". */
export const wordOn = (text: string, component: ComponentId, moment: Moment): Draft | undefined => {
  const words = plain(text);
  if (words.split(" ").length > MOST_WORDS || ELSE.test(words) || ownsAtOnce(words)) return undefined;
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

/** What is put before such a word so that it reads as one, in the order in which it is tried. */
const LEADS: readonly ((thing: string) => string)[] = [
  (thing) => `the ${thing} `,
  (thing) => `looked at the ${thing}: `,
  (thing) => `${thing}: `,
];

/** Trouble is that the work did not hold; what seems to be work told with how it came out ("we washed, and not a drop") is a look. */
const asLook = (draft: Draft, text: string): Draft => {
  const { kind, fault, outcome } = draft.fields;
  const isSaid = fault !== null && text.toLowerCase().includes(fault.toLowerCase());
  return {
    ...draft,
    fields: {
      ...draft.fields,
      kind: "check",
      action: kind === "check" ? draft.fields.action : "inspect",
      outcome: kind === "fault" ? "failed" : outcome,
      materials: [],
      cost: null,
      fault: isSaid ? fault : null,
    },
  };
};

/** Trouble told of one thing, as a word on the work on another that was to cure it. */
export const asWordOn = (trouble: Draft, component: ComponentId, text: string): Draft =>
  asLook({ ...trouble, fields: { ...trouble.fields, component, where: null } }, text);

/**
 * A word on work that is known, whatever it names: "dry as a bone up there over the bunk" of the roof seam. It is read with
 * the thing named before it; trouble told so is that the work did not hold.
 */
export const wordOnWork = (text: string, component: ComponentId, moment: Moment): Draft | undefined => {
  const [words, size] = [plain(text), text.split(/\s+/).length];
  if (text.includes("?") || size > MOST_WORDS_HEARD || ownsAtOnce(words)) return undefined;
  if (size <= MOST_WORDS && ELSE.test(words)) return undefined;
  let seems: Draft | undefined;
  for (const lead of LEADS) {
    const draft = oneBehind(lead(componentName(component)), text, component, moment);
    if (draft?.fields.kind === "check" || draft?.fields.kind === "fault") return asLook(draft, text);
    if (draft?.fields.kind === "repair" && draft.fields.outcome !== "untested") seems ??= draft;
  }
  return seems === undefined ? undefined : asLook(seems, text);
};
