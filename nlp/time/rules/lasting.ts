import { isAmong } from "../context.ts";
import { exposureOf, type Length, middleOf } from "../length.ts";
import { about } from "../period.ts";
import type { Reference } from "../reference.ts";
import { type Meaning, type Place, rule, wordAfter, wordBefore } from "../rule.ts";
import { shifted } from "../shift.ts";

/** What has gone on for a length of time began that long ago, about. */
const held = (length: Length, { today }: Reference, place: Place, sure: number): Meaning | undefined => {
  const lasting = exposureOf(length);
  if (lasting === undefined || lasting.count === 0 || isAmong("recurring", wordBefore(place)))
    return undefined;
  return {
    period: about(shifted(today, middleOf(length), -1)),
    lasting,
    role: "lasting",
    direction: "past",
    sure,
  };
};

/** "A week" and "one day" alone are hardly ever how long something held. */
const isSingle = (length: Length, { tokens, at }: Place): boolean =>
  tokens[at]?.raw === "a" || tokens[at]?.raw === "an" || (length.unit === "day" && length.high === 1);

export const LASTING_RULES = [
  ...rule(
    "lasting-now",
    [
      "for? <length> now",
      "for? <length> so far",
      "for? <length> already",
      "been <length>",
      "for? <length> and counting|running|holding|going",
      "for the? last|past <length>",
      "for? going on <length>",
      "been <length> since",
      "<length> since",
      "<length> strong",
    ],
    ({ length }, reference, place) => held(length, reference, place, 0.85),
  ),
  ...rule(
    "lasting-for",
    [
      "for <length>",
      "held|lasted|survived|managed up|out? for? <length>",
      "good|fine|dry|tight|solid for <length>",
      "after <length>",
      "inside|within of? <length>",
      "<length> later|in|on",
    ],
    ({ length }, reference, place) => held(length, reference, place, 0.55),
  ),
  ...rule("lasting-alone", ["<length>"], ({ length }, reference, place) =>
    isSingle(length, place) || isAmong("notLasting", wordAfter(place))
      ? undefined
      : held(length, reference, place, 0.25),
  ),
];
