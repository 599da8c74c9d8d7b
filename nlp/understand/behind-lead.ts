import type { Draft, Evidence, Moment, Span } from "../../shared/reading.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { read } from "../read/index.ts";

const earlier = ({ start, end }: Span, by: number): Span => ({
  start: Math.max(0, start - by),
  end: end - by,
});

const inText = ({ spans, ...evidence }: Evidence, by: number): Evidence => ({
  ...evidence,
  spans: spans.filter(({ end }) => end > by).map((span) => earlier(span, by)),
});

/** The one draft that a text reads as behind a lead, of the thing named there, as it stands in the text. */
export const oneBehind = (
  lead: string,
  text: string,
  component: ComponentId,
  moment: Moment,
): Draft | undefined => {
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
