import type { Draft, Span } from "../../shared/reading.ts";
import type { Field } from "../../shared/record.ts";

const spanOf = ({ evidence }: Draft, field: Field): Span | undefined => evidence[field]?.spans[0];

const isWithin = (inner: Span | undefined, outer: Span | undefined): boolean =>
  inner !== undefined && outer !== undefined && outer.start <= inner.start && inner.end <= outer.end;

const isSame = (one: Span | undefined, other: Span | undefined): boolean =>
  isWithin(one, other) && isWithin(other, one);

/** Whether a fault is told in words that name another thing, and its own is named only as where something else is. */
const isPlaceOnly = (draft: Draft, drafts: readonly Draft[]): boolean => {
  const [thing, words] = [spanOf(draft, "component"), spanOf(draft, "fault")];
  const others = drafts.filter((each) => each !== draft);
  return (
    draft.fields.kind === "fault" &&
    !isWithin(thing, words) &&
    others.some((each) => isWithin(thing, spanOf(each, "where"))) &&
    others.some((each) => isSame(spanOf(each, "fault"), words) && isWithin(spanOf(each, "component"), words))
  );
};

/** The drafts without the faults of what is only a place: "the floor is soft by the couch and the microwave won't come on". */
export const withoutPlaces = (drafts: readonly Draft[]): readonly Draft[] =>
  drafts.filter((draft) => !isPlaceOnly(draft, drafts));
