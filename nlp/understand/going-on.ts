import { plainWords } from "../../shared/memory/words.ts";
import type { Draft, Moment } from "../../shared/reading.ts";
import { type ComponentId, componentName } from "../../shared/vocabulary.ts";
import { deedNamed } from "../ask/deeds.ts";
import { speakingSigns } from "../ask/spoken-of.ts";
import { LEARNT_TALK } from "../judges/talk.ts";
import { oneBehind } from "./behind-lead.ts";

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
