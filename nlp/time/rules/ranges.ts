import { either } from "../meaning.ts";
import { dayOf, fromTo, type Period, spanOf } from "../period.ts";
import { nearest, seasonIn } from "../resolve.ts";
import { rule } from "../rule.ts";

const sameGrain = (a: Period, b: Period): boolean => a.grain === b.grain;
const SINCE = { role: "since", direction: "either", sure: 0.9 } as const;
const UNTIL = { role: "until", direction: "either", sure: 0.9 } as const;

export const RANGE_RULES = [
  ...rule("or", ["either <when> or <when2>", "<when> or <when2>"], ({ when, when2 }) =>
    sameGrain(when, when2) ? either(fromTo(when, when2), 0.8) : undefined,
  ),
  ...rule(
    "between",
    [
      "any? time|sometime|somewhere? between <when> and <when2>",
      "the? week|weeks|days between <when> and <when2>",
      "from <when> to|through|until|and|- <when2>",
      "from <when> up|right|clear to|until|through <when2>",
      "in <when> through|to <when2>",
    ],
    ({ when, when2 }) => either(fromTo(when, when2), 0.9),
  ),
  ...rule("to", ["<when> to|through|until|- <when2>"], ({ when, when2 }) =>
    sameGrain(when, when2) ? either(fromTo(when, when2), 0.8) : undefined,
  ),
  ...rule(
    "until-now",
    [
      "from|between|since <when> to|until|and|through now|today|date",
      "from <when> up to|until now|today|date",
      "<when> to|until|through now|today|date",
    ],
    ({ when }, { today }) => either(spanOf(when.recurs?.(today, -1) ?? when, dayOf(today)), 0.9),
  ),
  ...rule("from-now-to", ["between now and <when>", "from now to|until <when>"], ({ when }, { today }) =>
    either(spanOf(dayOf(today), when.recurs?.(today, 1) ?? when), 0.9),
  ),
  ...rule(
    "since",
    [
      "ever? since like|about|around|at|in|on? <when>",
      "from <when> on|onward|onwards|forward",
      "anything|any|sometime|any? time? after|later than? <when>",
      "starting in|on? <when>",
      "as of <when>",
    ],
    ({ when }) => ({ ...SINCE, period: when }),
  ),
  ...rule("since-season", ["ever? since|after the? <season>"], ({ season }, reference) => ({
    ...SINCE,
    period: nearest(
      { today: reference.today.subtract({ days: 1 }), prefer: reference.prefer },
      seasonIn(season, reference),
    ),
  })),
  ...rule(
    "until",
    [
      "not? until|by|before <when>",
      "not? until|by|before like|about|around|at|in|on <when>",
      "up to|until <when>",
      "prior to <when>",
      "no later than <when>",
      "earlier than <when>",
      "sometime|any? time? before <when>",
      "in time for <when>",
      "ahead of <when>",
    ],
    ({ when }) => ({ ...UNTIL, period: when }),
  ),
];
