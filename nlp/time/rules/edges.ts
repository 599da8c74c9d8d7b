import { isAmong } from "../context.ts";
import { either } from "../meaning.ts";
import { about, fromTo } from "../period.ts";
import { monthIn, nearest, unitAround } from "../resolve.ts";
import { rule, wordBefore } from "../rule.ts";
import { isCalendarUnit } from "./units.ts";

/** Parts of a longer stretch are kept as the whole stretch: "end of August" is August. */
export const EDGE_RULES = [
  ...rule(
    "edge",
    [
      "in|at|toward|towards|near? the? very? end|start|beginning|middle|tail of <when>",
      "the? back|front|tail end of <when>",
      "in? early|mid|late|middle -? <when>",
      "in? the? early|mid|late|middle <when>",
      "early|late|earlier|later on? in <when>",
      "in|during|over? the? early|latter|later|first|second|last|back|front|middle half|part|third of|in <when>",
      "in|during|over|through? the? first|second|third|fourth|last|middle week of|in <when>",
      "in|during|over? the? first|last week or two|so of|in <when>",
      "in|during|over? the? first|last <n> weeks|days of|in <when>",
      "in|during|over? the? first|last few|couple of? weeks|days of|in <when>",
      "in|during|over? the? early|first|latter|last|back|middle part|bit|days|couple of|in <when>",
      "in|within|over|during? the first|last few days|weeks of|in <when>",
      "half|part|mid way through <when>",
      "halfway|partway|midway|partly|well through|into <when>",
      "<length> into <when>",
      "in? early|mid to|- mid|late <when>",
      "in? the? early to mid|late <when>",
      "sometime|somewhere|someday in|during|over? <when>",
      "in? the month of <when>",
      "earlier|later <when>",
      "in|at|over? the? height|heat|heart|depth|depths|dead|thick|dregs of <when>",
      "in? high|full <when>",
      "in|during|over? the? <ord> week of|in <when>",
      "on|over? one|a|some|another day|night|evening|morning|afternoon|weekend|week back? in|of <when>",
    ],
    (slots) => either(slots.when, 0.9),
  ),
  ...rule(
    "about",
    ["around|about|approximately|near|maybe|probably <when>", "round|right|just about|around <when>"],
    ({ when }, _reference, place) =>
      isAmong("notAHedge", wordBefore(place)) ? undefined : either(about(when), 0.85),
  ),
  ...rule("back-then", ["way? back <when>"], ({ when }) => either(when, 0.92)),
  ...rule("or-so", ["<when> or so", "<when> or thereabouts", "<when> - ish", "<when> ish"], ({ when }) =>
    either(about(when), 0.85),
  ),
  ...rule(
    "edge-to-edge",
    [
      "late|end <month> ,or|to|into|and|/|-? early|beginning|start <month2>",
      "maybe|probably|either <month> ,or? maybe|probably|possibly <month2>",
      "the? end of <month> ,or|to|into|and|-? the? beginning|start of <month2>",
      "the? end of <month> ,or|to|into|and|-? early <month2>",
      "late <month> ,or|to|into|and|-? the? beginning|start of <month2>",
    ],
    ({ month, month2 }, reference) =>
      either(fromTo(nearest(reference, monthIn(month)), nearest(reference, monthIn(month2))), 0.85),
  ),
  ...rule("nearly", ["just|right|shortly|soon before|after|past <when>"], ({ when }) =>
    either(about(when), 0.8),
  ),
  ...rule(
    "start-of-unit",
    [
      "at|from|in|since|around? the? start|beginning of the? <unit>",
      "at? the? start|beginning of this <unit>",
    ],
    ({ unit }, reference) => (isCalendarUnit(unit) ? either(unitAround(reference, unit, 0), 0.7) : undefined),
  ),
  ...rule("in-the-unit", ["early|late|earlier|later on? in the <unit>"], ({ unit }, reference) =>
    isCalendarUnit(unit) ? either(unitAround(reference, unit, 0), 0.7) : undefined,
  ),
  ...rule("end-of-unit", ["at|in|by|around? the? very? end of the? <unit>"], ({ unit }, reference) => {
    if (!isCalendarUnit(unit)) return undefined;
    const { last } = unitAround(reference, unit, 0);
    const near = last.since(reference.today).days <= { week: 2, month: 5, year: 60 }[unit];
    return either(unitAround(reference, unit, reference.prefer === "past" && !near ? -1 : 0), 0.6);
  }),
];
