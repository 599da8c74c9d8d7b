import { OWNS_UP } from "./owning-up.ts";
import { type Rule, upTo } from "./rules.ts";

const OWNED = `(?:sorry|apologies|my mistake|my bad|my error|oops|whoops|duh|doh|forgive me|pardon)`;
/** How words that put something right may end. */
const AFTER = [
  "or rather",
  "rather",
  "i (?:should|ought to) (?:have said|say)",
  "(?:is |was )?what i (?:should have|meant to) (?:said|say)",
  "i mean",
  "i meant",
  "i tell a lie",
  "come to think of it",
  "now that i think (?:of|about) it",
  "now i think (?:of|about) it",
  "thinking about it",
  "on reflection",
  "i (?:was|must have been) (?:thinking|looking|going) (?:of|at|about|by|off)\\b[^.!?]*",
  "(?:like|as) i (?:said|told you|had it|wrote)(?: (?:at first|first|before|to (?:begin|start) with|in the first place|originally|all along))?",
  "i had (?:it|that) right (?:the first time|at first|before|to begin with|in the first place|originally|all along)",
  "to be exact",
  "as it turns out",
  "it turns out",
  "i find",
  "i see now",
  "now i look",
  "now that i look",
  "(?:according to|going by|per) (?:the|my|our) \\S+(?: \\S+)?",
  "says (?:the|my) (?:receipt|bill|invoice|slip|diary|calendar|photo|label|tin|tube|box|wife|husband|son|daughter|brother|sister|partner)",
  `${OWNED}(?:,? (?:i|wrong|looked|misread|slip|typo|brain|thumbs?|fat|dyslexic|finger)\\b[^.!?]*)?`,
  `i (?:just |always |must have )?${OWNS_UP}\\b[^.!?]*`,
].join("|");

/** An afterthought that shows the words before it to put something right: "54, rather", "fifty four sorry I misread it". */
export const AFTERTHOUGHTS: readonly Rule[] = [
  {
    when: new RegExp(
      `^(?!(?:no|nope|sorry|oops)\\b)((?:${upTo(4)}, )?${upTo(8)})(?:,| -+| –|;|\\.)? (?:${AFTER})(?=[.!;,:]|\\s*$)`,
      "i",
    ),
    to: "no, $1",
  },
  {
    when: new RegExp(
      `^(?!(?:no|nope|sorry|oops|actually)\\b)(${upTo(10)}),? (?:actually|in fact|after all)[.!\\s]*$`,
      "i",
    ),
    to: "actually, $1",
  },
];

const PAPER =
  "(?:receipt|bill|invoice|slip|statement|till roll|diary|calendar|photos?|pictures?|notebook|log|tube|tin|box|can|label|packet|package|tub|roll|order|e-?mails?|bank|card|manual|docket|dates?|texts?|paperwork)";
const FORE = "(?:(?:i|i've|ive|i have|just|right|ok|okay|so|well|ah|now|been) )*";
const GLUE = "(?:,|:|;| -+|\\.| and| so| that| where| it says| says)*";

/** What somebody looked up before putting something right. */
export const LOOKED_UP: readonly Rule[] = [
  {
    when: new RegExp(
      `^${FORE}(?:found|got|have|had|dug out) (?:the|my|our) ${PAPER}(?: here| at last| finally)* (?:for|from|of) (?:that|the|my|our) ([^.,;!?]{3,60})[.,;]+ *(?:'?twas|it was|it's|it says|says|it came to|comes to|that's)? ?((?=\\S*\\d|[a-z]+(?:teen|ty)\\b).{1,25})$`,
      "i",
    ),
    to: "no, the $1 was $2",
  },
  {
    when: new RegExp(
      `^${FORE}(?:found|got|have|had|checked|checking|looked (?:at|up|through|over)|looking (?:at|through)|going (?:by|through)|according to|by|dug (?:out|up)|see(?:ing)?|per|opened|went (?:through|over)|reading|reread) (?:the|my|our|me|his|her|their|a) (?:[\\w'-]+ ){0,3}?${PAPER}(?: (?:again|now|back|here|in (?:my|the) hand|(?:from|for|off|of|on) (?:the|my|our) [\\w-]+(?: guy| man| shop| place| people| roll| tin| tube| job)?|in front of me|out|through|today))*${GLUE} (?:(?:it )?(?:says|said|shows|was|is|came to|cost|reads) |it's |its |it was |that was |that's |he charged |they charged |she charged )*(?=\\S)(.{1,60})$`,
      "i",
    ),
    to: "actually, it was $1",
  },
  {
    when: new RegExp(
      `^(?:the|my|our) (?:[\\w-]+ ){0,2}?(?:${PAPER}|wife|husband|son|daughter|brother|sister|partner|mate|neighbou?r|missus|other half|dad|mum|mom) (?:says|said|reckons|tells me|reminds me|swears|insists|shows|reads|remembers)(?: that)?(?: it (?:was|is|cost)| it's| its| that was| we did (?:it|that)| i did (?:it|that))? (.{1,50})$`,
      "i",
    ),
    to: "actually, it was $1",
  },
  {
    when: new RegExp(
      `^${FORE}(?:always |keep |must have )?${OWNS_UP}(?: (?!it\\b|that\\b)[\\w'-]+){0,4}(?:,|:|;|\\.| -+| —) ?(?:so |it's |its |it was |that's |that was |should be )*(.{1,50})$`,
      "i",
    ),
    to: "no, it was $1",
  },
  {
    when: new RegExp(
      `^(?:the|my) ${PAPER}(?: (?:from|for|off) (?:the|my|our) (?:\\S+ ){0,2}?\\S+)? (?:has )?(?:finally |just )?(?:came|arrived|come|is in|turned up|showed up)(?: in| through| today| back)*(?:,|:|;|\\.| and| -+) (?:it's |its |it was |that's |it came to |it says |comes to )*(.{1,50})$`,
      "i",
    ),
    to: "actually, it was $1",
  },
  {
    when: /^(?:the|my|our) (?:\S+ ){0,2}?\S+ (?:just |has just )?(?:rang|called|phoned|texted|emailed|wrote|messaged)(?: back| me| us| again| just now)*(?:,|:|;|\.| and| -+| to say) (?:that )?(?:they|he|she|it)(?:'s| is| was)?(?: only| actually)? (?:charged|charging|wants?|cost|came to|asking) (.{1,30})$/i,
    to: "actually, it cost $1",
  },
  {
    when: new RegExp(
      `^(?:it |the \\S+ )?(?:says|reads) (${upTo(4)}) on the ${PAPER}(?:,? (not .{1,30}))?$`,
      "i",
    ),
    to: "no, it was $1 $2",
  },
  {
    when: /^(?:two|three|a couple of|a few|some) (?:things wrong|corrections|mistakes|errors)(?: (?:there|here|on that|in that|with that|to that|to make))?\s*[:,;-]+ (.+)$/i,
    to: "no, $1",
  },
  {
    when: /^(?:that|it|this)(?: would| will|'d|'ll) (?:have been|be) (?=the |my |on |at |in )(.{1,40})$/i,
    to: "actually, it was $1",
  },
  {
    when: /^((?:the )?(?:left|right|front|rear|back|near|off|street|curb|kerb|door|driver'?s?|passenger)(?: ?hand)?(?: ?side| end| one)), (?:i was|i'm|i am|i always|i had|i got|not that|sorry).*$/i,
    to: "no, it was $1",
  },
  {
    when: /^(left|right|front|rear|back)(?: side| one)?,? not (?:the )?(left|right|front|rear|back)(?: side| one)?[.!\s]*$/i,
    to: "no, it was the $1 not the $2",
  },
  {
    when: /^(?:no new \S+ (?:went in|was fitted),? )?((?:i|we|he|she|they) (?:only|merely|just) \S+ (?:it|them|that))(?:,? (?:i |he |she |we |they )?(?:didn't|did not|never|not|rather than|instead of|without) .*)[.!]?$/i,
    to: "no, $1",
  },
  {
    when: /^(?:(?:i|i'd|i had|plus|and) )*(?:forgot(?:ten)?|left out|missed(?: out)?|didn't count|didn't include|plus|adding|counting|including)(?: to (?:add|count|include|mention))? (?:the |for |in )?\S+(?: \S+)?(?:,|:|;|\.| -+| and)? (?:so |it's |its |that's |it was |it came to |makes it |making it |which makes it |brings it to |came to )*(\D{0,25}?[$£€R]?\d[\d.,]*\b[^.!?]{0,20})$/i,
    to: "no, it was $1",
  },
  {
    when: /^(?:the )?(?:cost|price|date|day|material|side|place|component|part|total|amount)\s*[:=]\s*(\S.{0,50})$/i,
    to: "no, it was $1",
  },
  {
    when: /^(?:correction|an? correction|fix|amendment|change) (?:to|on|for|of|re) (?:the |my |that |its )?(?:cost|price|date|day|material|side|place|component|part|total|amount|last one|last note|last entry|above|that)\s*[,:;-]+ (\S.{0,50})$/i,
    to: "no, it was $1",
  },
  {
    when: /^(?:the )?(?:cost|price|date|day|material|side|place|component|part|total|amount)(?: (?:is|was))?(?: wrong)?,? (?:should|ought to) (?:be|have been|read|say) (\S.{0,50})$/i,
    to: "no, it was $1",
  },
];
