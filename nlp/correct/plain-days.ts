const SHORT: ReadonlyMap<string, string> = new Map([
  ["wed", "wednesday"],
  ["weds", "wednesday"],
  ["sat", "saturday"],
  ["sun", "sunday"],
]);
const DAYS = "mon|tue|wed|thu|fri|sat|sun";
const AHEAD =
  "(?:was|were|is|its|it's|wasn't|wasnt|isn't|isnt|not|on|the|last|said|meant|say|make it|that|it)";
const BEHIND = `(?=\\s*(?:$|[.,;!?)])|\\s+(?:not|and|morning|night|evening|afternoon|arvo|the \\d|sorry|i|we|he|she|(?:${DAYS})))`;
const SHORTENED = new RegExp(`(?<=(?:^|\\b${AHEAD} ))(weds?|sat|sun)\\b${BEHIND}`, "gi");

/** "The thursday after my shift": what follows says when on that day, and no other day. */
const AFTER_SOMETHING =
  /\b(\w+days?) (after|before) (?=(?:my|ma|me|our|his|her|their|work|church|school|lunch|dinner|supper|breakfast|tea|a|an)\b)/gi;

/** "Three weeks, not two": so long ago, and nothing else said. */
const SO_LONG_AGO =
  /^(\W*(?:(?:no|nope|sorry|actually|make (?:it|that)|it was|more like) )*)((?:an?|\d+|[a-z]+(?:[ -][a-z]+)?) (?:days?|weeks?|months?|years?))(?: ago)?,? not ((?:an?|\d+|[a-z]+)(?: (?:days?|weeks?|months?|years?))?(?: ago)?)(\W*(?:sorry)?\W*)$/i;

/** "Closer to four months", "make it three weeks actually": so long ago. */
const RATHER_SO_LONG =
  /^(\W*(?:(?:uh|um|no|nope|nah|sorry|actually|well|hang on) )*(?:closer|nearer) to |\W*(?:(?:uh|um|no|nope|nah|sorry|well) )*(?:make (?:it|that)|more like|it was more like|call it|say) )((?:about |around |roughly |nearly )?(?:an?|\d+|[a-z]+(?:[ -][a-z]+)?) (?:days?|weeks?|months?|years?))(?! (?:ago|back|later|after|before|long|old|now|in|of))/i;

/** The text with its days of the week written out: "it was wed not thurs". */
export const plainDays = (text: string): string =>
  text
    .replace(SO_LONG_AGO, "$1$2 ago")
    .replace(RATHER_SO_LONG, "$1$2 ago")
    .replace(SHORTENED, (day) => SHORT.get(day.toLowerCase()) ?? day)
    .replace(AFTER_SOMETHING, (whole, day: string, side: string) =>
      new RegExp(`^(?:${DAYS})`, "i").test(day) ? `${day}, ${side} ` : whole,
    );
