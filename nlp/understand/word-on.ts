import { plainWords } from "../../shared/memory/words.ts";
import type { Draft, Evidence, Moment, Span } from "../../shared/reading.ts";
import { type ComponentId, componentName } from "../../shared/vocabulary.ts";
import { deedNamed } from "../ask/deeds.ts";
import { placesSaid } from "../ask/places-said.ts";
import { speakingSigns } from "../ask/spoken-of.ts";
import { topicOf } from "../ask/topic.ts";
import { ownsAtOnce, plain } from "../correct/pieces.ts";
import { LEARNT_TALK } from "../judges/talk.ts";
import { read } from "../read/index.ts";
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

const earlier = ({ start, end }: Span, by: number): Span => ({
  start: Math.max(0, start - by),
  end: end - by,
});

const inText = ({ spans, ...evidence }: Evidence, by: number): Evidence => ({
  ...evidence,
  spans: spans.filter(({ end }) => end > by).map((span) => earlier(span, by)),
});

/** The one draft that a text reads as behind a lead, of the thing named there, as it stands in the text. */
const oneBehind = (lead: string, text: string, component: ComponentId, moment: Moment): Draft | undefined => {
  const [draft, ...others] = read(lead + text, moment).records;
  if (draft === undefined || others.length > 0 || draft.fields.component !== component) return undefined;
  const by = lead.length;
  return {
    ...draft,
    evidence: Object.fromEntries(
      Object.entries(draft.evidence).map(([field, each]) => [field, inText(each, by)]),
    ),
    span: earlier(draft.span, by),
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

/** From here on, words speak of a thing without naming it: "what the wheels spin on". */
const SPOKEN_OF = 0.95;

/** Whether only what was done calls a thing to mind: "put", "hung". */
const isOfDeedOnly = ({ fields, evidence }: Draft, text: string): boolean => {
  const spans = evidence.component?.spans ?? [];
  return (
    spans.length > 0 &&
    (LEARNT_TALK.spoken(speakingSigns(text)).get(fields.component) ?? 0) < SPOKEN_OF &&
    spans.every(({ start, end }) =>
      plainWords(text.slice(start, end)).every((word) => deedNamed(word) !== undefined),
    )
  );
};

/**
 * Work on a known thing that the text does not name: "stronger one is in since this morning" of the inverter. `drafts` is
 * what the text reads as by itself: nothing, or work on a thing that only its deed calls to mind.
 */
export const workGoingOn = (
  text: string,
  component: ComponentId,
  drafts: readonly Draft[],
  moment: Moment,
): Draft | undefined => {
  const [mine, ...others] = drafts;
  if (others.length > 0 || text.includes("?")) return undefined;
  if (mine !== undefined && (mine.fields.kind !== "repair" || !isOfDeedOnly(mine, text))) return undefined;
  const draft = oneBehind(`${componentName(component)}: `, text, component, moment);
  const isSaid = (draft?.evidence.action?.spans.length ?? 0) > 0;
  return draft?.fields.kind === "repair" && isSaid ? draft : undefined;
};
