import type { Purpose } from "../../shared/memory/intent.ts";
import type { Moment } from "../../shared/reading.ts";
import { scan } from "../read/scan.ts";
import { findTimes } from "../time/index.ts";

const LEAVING =
  /\b(?:(?:i|we|were|im|we are|i am) (?:will |are |am |gonna |going to |plan to |hope to |planning to )?(?:be )?(?:leave|leaving|head(?:ing)? (?:out|off|north|south|east|west|for|to|down|up)|set(?:ting)? (?:off|out)|hit(?:ting)? the road|roll(?:ing)? out|pull(?:ing)? out|depart(?:ing)?|take off|taking off|off)|leaving|heading (?:out|off|north|south|for|to)|setting (?:off|out)|(?:the |our |next )?(?:trip|departure) (?:is|starts|begins)|(?:thats|that is) (?:us|me) off|^(?:(?:and|so|ok|well|right|all) )*off)\b(?! (?:it|them|that|those|this|the (?:\w+ )?(?:alone|open|as|on|in place)))/;

const HOME =
  /^(?:(?:well|ok|and|so|hey|finally|we are|were|im|i am|we got|we made it|made it|got|safely|we|are) )*(?:home|back home|home again|home safe|back from (?:the|our) trip|parked (?:up )?for (?:the )?winter|trip is over|trips over|the trips over|end of (?:the )?trip)(?: (?:now|again|safe|safely|at last|today|tonight|safe and sound|from the trip))*$/;

const aheadIn = (text: string, moment: Moment) =>
  findTimes(text, moment, { prefer: "future" }).filter(
    ({ edtf, sure, role }) =>
      sure >= 0.5 && role !== "since" && edtf.slice(0, 10) >= moment.said.slice(0, edtf.slice(0, 10).length),
  );

const endOf = (edtf: string): string => edtf.split("/").at(-1) ?? edtf;

const LASTS =
  /\bfor (?:(?:about|around|roughly|some|the) )?((?:a|one|two|three|four|five|six|seven|eight|nine|ten|twelve|\d+) (?:days?|weeks?|months?|years?))\b/i;

/** The day after a length of time from a day on, as the time finder words it. */
const afterLength = (text: string, from: string, moment: Moment): string | null => {
  const length = LASTS.exec(text)?.[1];
  if (length === undefined || from.length !== 10) return null;
  const start = { ...moment, said: `${from}T12:00:00Z` };
  return findTimes(`in ${length}`, start, { prefer: "future" })[0]?.edtf.replace("~", "") ?? null;
};

const FLEXIBLE = 30;

/** A trip announced: when, until when, how far. Not when the message also tells of the rig's things. */
export const journeyIn = (text: string, words: string, moment: Moment): Purpose | undefined => {
  if (HOME.test(words)) return { is: "home" };
  if (!LEAVING.test(words) || words.split(" ").length > FLEXIBLE) return undefined;
  const found = scan(text, moment);
  if (found.components.some(({ weak }) => !weak) || found.faults.length > 0) return undefined;
  const times = aheadIn(text, moment).filter(
    ({ span }) => !LASTS.test(text.slice(Math.max(0, span.start - 4), span.end)),
  );
  const from = times[0];
  if (from === undefined) return undefined;
  const to =
    times[1]?.edtf ?? (from.edtf.includes("/") ? endOf(from.edtf) : afterLength(text, from.edtf, moment));
  const use = found.amounts.flatMap(({ what, value }) =>
    what === "miles" || what === "km" || what === "nights" ? [{ count: value, unit: what }] : [],
  );
  return { is: "leave", from: from.edtf.split("/")[0] ?? from.edtf, to, use };
};
