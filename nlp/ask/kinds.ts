import type { Asked, Rule } from "./asked.ts";
import { IDIOMS } from "./idioms.ts";
import table from "./kind-words.json" with { type: "json" };

/** Any of the phrases; the longest first, a star for any ending. */
const anyOf = (phrases: readonly string[]): string =>
  `(?:${[...phrases]
    .sort((one, other) => other.length - one.length)
    .join("|")
    .replaceAll("*", "\\w*")})`;

const FAILS = anyOf(table.fails);
const MONEY = anyOf(table.money);
const FIXES_FAILED = new RegExp(
  `\\b(?:repairs?|fix(?:es)?|patch(?:es)?|mends?|mendings?|cures?|jobs?|goes|attempts?|tries|seals?|of (?:them|those|these|mine))\\b(?: \\w+){0,9}? (?<!\\b(?:the|that|this|those|an?|my|our|its) )${FAILS}\\b`,
);

/** "How many of my repairs on it have let go": how often fixes failed, not how many there were. */
export const countsFailures = (words: string): boolean => FIXES_FAILED.test(words);

const LASTED = anyOf(table.lasted);

/** In order: the first that fits. What is narrower stands before what is wider; the order of money, buying and counting matters. */
const RULES: readonly Rule[] = [
  {
    kind: "decide",
    rule: "worth-it",
    when: /\b(?:is it (?:worth|time|better|smarter|cheaper|pointless|sensible)|worth|does it (?:pay|make)|would it (?:pay|make|be better)|make sense|should (?:i|we) (?:just |rather |keep |bother |even |give |try |go on )?|better (?:to|off)|time to)\b.*\b(?:patch\w*|repair\w*|replac\w*|fix\w*|bother\w*|glu\w*|seal\w*|bodg\w*|new one|give up|again|keep)\b/,
    unless: /\b(?:when|did|have i|has|still|how many|how much|ever|list|buy|what)\b/,
  },
  {
    kind: "decide",
    rule: "patch-or-replace",
    when: /\b(?:patch|repair|fix|mend|seal|glue)\w* (?:it |the \w+ |them )?or (?:replace|buy|swap|new|change|get)/,
  },
  {
    kind: "ready",
    rule: "ready-to-go",
    when: /\b(?:are we|am i|is (?:she|he|it|the \w+|\w+)) (?:all )?(?:ready|good|set|fit|safe|clear|okay|ok) (?:to|for) (?:go|leave|roll|travel|tow|the road|the trip|hit|head|pull|a trip|departure|set off)|roadworthy|road ready|departure list|before (?:i|we) (?:leave|go|set off|head out|pull out|hitch up|roll|hit the road|tow)(?! (?:to town|shopping))|(?:can|could|should) (?:i|we) (?:leave|set off|roll out|head out)\b/,
    unless:
      /\b(?:did|have) (?:i|we) (?:ever|already)\b|\b(?:left|open|outstanding|undone|buy|order|shopping|pick up|still|supposed|happen|list)\b/,
  },
  {
    kind: "open",
    rule: "meant",
    when: /\b(?:say|said|mention|mentioned|promise|promised|mean|meant|plan|planned|planning|intend|intended|want|wanted|hope|hoped) (?:(?:that )?(?:id|wed|i would|we would|i was|we were|i wanted|we wanted|ill|well) (?:going to |gonna |meaning to |to )?|to )(?:do|fix|sort|get|see|replace|buy|repair|mend|seal|paint|change|order|check|tackle|finish)\b/,
    unless: /\b(?:when|how much|cost)\b/,
  },
  {
    kind: "said",
    rule: "said",
    when: /\b(?:did|have|had|do|does|was) .*\b(?:say|said|mention|mentioned|tell you|told you|note|noted|write|wrote|written|record|recorded|report|reported)\b|\b(?:my|our) (?:exact |own )?words\b|\b(?:i|we) (?:said|mentioned|noted|wrote down|told you|reported)\b|\b(?:play|read) (?:it |that |me )?(?:back|my note|the note)|\bhear (?:it|that|my)\b|\bnotes? (?:about|on|from|mention)|\bnotes? (?:do|did|have) (?:i|we|you)\b|\b(?:a|any) note\b/,
    unless:
      /\bcost|\bodometer\b|\b(?:say|said|mention|mentioned) (?:that )?(?:id|wed|i (?:would|was going|wanted|meant)|we (?:would|were going|wanted|meant))\b/,
  },
  {
    kind: "use",
    rule: "use",
    when: /\bhow (?:many|much) (?:\w+ ){0,2}(?:miles?|kms?|kilomet\w+|ks|kays|clicks|klicks|nights?|trips?|storms?|fills?|cycles?|freezes?)\b|\bhow far\b|\btotal (?:nights|miles|kms?|kilomet\w+|distance|trips)\b|\b(?:odometer|mileage)\b|\bhow many (?:days|weeks) .*\b(?:out|away|camp|lived|stayed|spent|on the road)|\bdistance\b|\bhow much (?:towing|driving)\b|\bhow many times (?:have|did) (?:i|we) (?:tow|go out|camp|take (?:her|it) out)|\bhow much (?:have|did) (?:i|we) (?:tow|towed|drive|driven|drove|use (?:her|it|the \w+)|used (?:her|it|the \w+))\b/,
    unless: /\b(?:since (?:i|we|the last)|money|cost)\b/,
  },
  {
    kind: "worst",
    rule: "worst",
    when: /\b(?:what|which|whats)\b.*\b(?:keeps?|kept|always|most often|the most often)\b.*\b(?:fail\w*|break\w*|broke\w*|leak\w*|coming|going|letting|giv\w+|play\w* up|act\w* up)|\b(?:most|more) (?:trouble|grief|headaches?|problems|failures|bother)|\bweak(?:est)? (?:spots?|points?|links?)|\b(?:failed|broken|broke|let me down|gone wrong|fails|breaks) (?:the )?(?:most|more than once|twice|again and again|repeatedly)|\btroublemakers?|\bworst (?:offender|thing|part|culprit)|\brepeat offenders?/,
  },
  {
    kind: "longest",
    rule: "longest",
    when: new RegExp(
      `\\b(?:longest|(?:lasted|held|worked|did|stood|stuck|stayed) (?:up )?(?:longer|better)|did (?:the )?best|(?:came|comes) out (?:on top|best|ahead)|proved (?:the )?(?:best|better)|won out|outlasted|lasted (?:the )?best|held (?:up )?(?:the )?best|best (?:fix|way|method|cure|stuff|repair|so far|attempt|bet)|worked (?:the )?best|${LASTED} (?:me )?(?:up |out |on )?(?:the )?(?:best|most|shortest|least)|shortest|how long (?:did|do|does|has|have|had) (?!i |we |it been\\b)(?:\\w+ ){1,12}?${LASTED}|longest lasting|which (?:one|of them|of those|of these|of the \\w+) (?:lasted|held|worked|stuck|stood)|(?:what|which) .*(?:held|lasted|worked|stuck|stood up|stayed|did) .*(?:best|longest)|most durable|(?:did|lasted|gave|got|stood) (?:me |us )?the most (?:miles|months|weeks|years|trips|days|nights)|how long did (?:it|that|they|he) ${LASTED})\\b`,
    ),
  },
  {
    kind: "count",
    rule: "times-failed",
    when: new RegExp(
      `\\b(?:how (?:many times|often|many goes)|number of times|what number|how many (?:\\w+ ){1,5}(?=.*\\b${FAILS}\\b)|times)\\b.*\\b${FAILS}\\b|\\b(?:how many|number of|count of) (?:failures|leaks|breakdowns|blowouts|flats|punctures)\\b`,
    ),
  },
  {
    kind: "count",
    rule: "times-done",
    when: /\b(?:how (?:many times|often|many goes|many)|number of times|how frequently)\b/,
    unless: new RegExp(
      `\\bhow many (?:months|weeks|years|days)\\b|${MONEY}|\\b(?:(?:i|we) (?:still )?need|buy|open|left|due|should|list|outstanding)\\b`,
    ),
  },
  {
    kind: "cost",
    rule: "money",
    when: new RegExp(
      `\\b(?:how much|what|whats|total|sum|all told|altogether|how many|show|list)\\b.*\\b${MONEY}\\b|^${MONEY}\\b|\\bhow much (?:went|goes|did|was|were|has|have|is|for|in|on)\\b|\\b(?:total|tally|bill) (?:for|on|so far|to date|in|of)\\b|\\btotal (?:spent|cost|spend|outlay)|\\b(?:running|grand) total|\\bhow deep\\b|\\bhow much(?: (?:al+ ?together|in (?:all|total)|all (?:told|up|in)|so far|to date|total))*$|\\b(?:dearest|costliest|cheapest|most (?:expensive|costly|money)|biggest (?:bill|expense|outlay|spend|cost))\\b|\\b(?:doing|fixed|off|placed|situated) for (?:money|cash)\\b|^(?:add|tot|total|tally|reckon) (?:\\w+ ){0,3}?(?:up|together)\\b|^work out\\b|^(?:the |grand |overall )?(?:total|tally|sum|bill|damage|spend)$|\\bhow much of (?:that|it|this|those)\\b|\\b(?:expensive|dear|pricey|cheap)\\b|\\b(?:in|of) (?:money|cash|dollars)\\b|^(?:\\w+ ){0,5}(?:costs?|spend|spending|expenses|outlay)(?: (?:of|for|in|on|so|to|total|since|during)\\b.*| \\d{4})?$`,
    ),
    unless:
      /^(?:run|walk|take) (?:me|us)\b|\bhow much (?:longer|time|water|grease|sealant|of the)\b|\bto (?:buy|get)\b|\bshopping\b/,
  },
  {
    kind: "buy",
    rule: "shopping",
    when: /\b(?:shopping|shop for|need (?:in|from) (?:town|the (?:shops?|stores?|hardware|merchant|village|city))|(?:in|from|into) town|(?:to|i|we|gotta|should|must|need to|have to|still|still to|must) (?:buy|order|purchase|get hold of|get in|pick up|stock up|source|bring back|bring home|grab|fetch)|get (?:anything|something) in|parts? (?:list|run|to (?:get|buy|order|pick)|i need|do i need|we need|am i|are we)|pick up|hardware store|parts store|at the store|from the store|buy list|to buy|to order|on order|buying|needs? buying|needs? ordering|needs? replacing|short of|purchases?|supplies|what (?:bits|parts|spares)|(?:bits|parts|spares) (?:do|should|am|are|must|have) (?:i|we)|anything to (?:get|buy|order)|(?:do|does) (?:i|we|she|it) (?:still )?(?:need|want) (?:anything|something|any|more)|ordering|(?:at|to) the shops?|shopping list|pick (?:\w+ )?up|new parts)\b/,
    unless: /\b(?:when|where|did (?:i|we)|how much|have (?:i|we) (?:ever|already)|last)\b/,
  },
  {
    kind: "due",
    rule: "due",
    when: /\b(?:due|overdue|next (?:look|check|inspection|due|service)|look (?:at )?next|check next|needs? (?:checking|a look|looking at|inspecting|inspection)|should (?:i|we) (?:be )?(?:look|looking|check|checking|inspect|inspecting|keep an eye)|(?:when|how soon) (?:should|do|must|will|is|are|does) .*\b(?:again|next|look|check|need))\b/,
    unless: /\b(?:did|have|was|were|last)\b/,
  },
  {
    kind: "open",
    rule: "open",
    when: /\b(?:open|outstanding|pending|unfinished|unresolved|undone|unfixed|undealt|loose ends?|hanging (?:over|about) (?:me|us)|on my plate|on (?:the|my|our) (?:to do|todo|docket|books|plate)|to ?do(?: list)?|todos?|backlog|(?:left|remains|remaining|waiting) (?:to|for|on|undone|over|unfixed)|still (?:left|broken|waiting|wrong|needs?|need|to|got to|have to|gotta)|got left|needs? (?:doing|fixing|attention|sorting|work|repair\w*|mending|seeing to)|have i (?:still )?(?:got|to)|(?:do|must|should) (?:i|we) (?:still )?(?:have|need|got|do|fix|sort|get)(?: left)? ?(?:to)?|havent (?:i|we)|(?:i|we) (?:havent|have not|still havent|never got)|not (?:yet )?(?:done|fixed|dealt)|put(?:ting)? off|owe (?:her|the|it)|(?:havent|have not|hasnt) (?:\w+ ){0,3}(?:been )?(?:fixed|done|sorted|mended|repaired|replaced|seen to|dealt with|got (?:a)?round to|gotten (?:a)?round to|got to)|(?:forgotten|forgot|missed|neglected|behind on|got (?:a)?round to|gotten (?:a)?round to|got to yet)|remaining|remains?|(?:id|i would|i was going to|i meant to|i wanted to|wed|we would|we were going to|we meant to) (?:do|fix|sort|get|see)|(?:is|are) (?:everything|it all|all of it) (?:\w+ )?(?:fixed|done|sorted|ok|okay|good|working|taken care of)|isnt right|still (?:isnt|not|arent)|broken (?:at the moment|right now|now|just now)|whats (?:still )?(?:broken|broke|wrong|left|bust|busted)|(?:is|are) (?:anything|something|there anything|there something) (?:still |else )?(?:broke|broken|wrong|open|left|bust|busted|outstanding|out|not working|that needs)|what is (?:broken|wrong|left|bust|busted)|jobs? (?:left|remaining|waiting|ahead|do i)|what needs|anything (?:left|open|broken|wrong|else to do|to (?:do|fix|sort))|whats (?:next|to do)|faults? (?:do|are|have|still)|still (?:a )?problem|supposed to (?:be )?(?:fix|do|sort|mend|repair)\w*|not working|isnt working|out of action|^what(?:s| is| else is)? (?:still |left |else )*on (?:there|it)$|agenda|planned|on the cards|anything (?:else |more |still |other )?(?:wrong|broken|bust|amiss)|on (?:that|this) list|in the pipeline|lined up|in store|to tackle|coming up|loose ends|wants? doing|to fix|to mend|to sort|(?:must|should|has to|have to|needs? to|got to|gotta) (?:still |yet )?(?:happen|be done|get done|be seen to|be sorted)|on (?:the|my|our) (?:\w+ )?list|still to (?:do|fix|sort|mend))\b/,
    unless:
      /\b(?:did (?:i|we|the)|when|how (?:long|did)|holding|ever|cost|last(?:ed)?|spent|under (?:my|our) belt|(?:got|been|have) (?:\w+ )?(?:done|finished)|behind (?:me|us)|knocked off|ticked off|crossed off)\b/,
  },
  {
    kind: "last",
    focus: "who",
    rule: "who",
    when: /^(?:who|whos|whod|whom|whose)\b|\bwho (?:did|fixed|replaced|put|changed|made|sealed|was it|done)\b|\b(?:was it|did) (?:me|i|the shop|the dealer) (?:or|that)\b|\bby whom\b|\bwas (?:it|that) (?:\w+ ){1,3}(?:who|that did)\b|\b(?:myself|me|us|i|we) or (?:was it |did |somebody|someone|the|a|my|our)\b|\bor (?:was it|did) (?:me|i|we|the|my|a)\b/,
  },
  {
    kind: "last",
    focus: "why",
    rule: "why",
    when: /^(?:why|how come|what for|for what reason|whyd)\b|\bwhat was (?:the matter|wrong|the reason|the problem|the trouble)\b|\bwhat (?:reason|made me)\b/,
  },
  {
    kind: "last",
    focus: "how-long-ago",
    rule: "how-long-ago",
    when: /\bbeen (?:a while|ages|long|a long time) since|\bhow (?:long (?:ago|since|is it since|has it been|have we gone|have i gone|it been|(?:have|has) (?:i|we|it|she|he|the \w+) (?:had|been on|been in))|old (?:is|are|were|was)|many (?:months|weeks|years|days) (?:ago|since|old)|recently|long back)\b/,
  },
  {
    kind: "last",
    focus: "when",
    rule: "when",
    when: /^(?:when|whens|whend)\b|\bwhen$|\bwhen (?:did|was|were|have|had|has|it|that|i|we)\b|\b(?:what|which) (?:day|date|year|month|week|season|time)\b|\blast time\b|\bdate (?:of|that|when|for|i)\b|\bsince when\b/,
  },
  {
    kind: "last",
    focus: "place",
    rule: "where",
    when: /^(?:where|wheres|whered|whereabouts)\b|\bwhich (?!jobs?|repairs?|fix|fixes|work|way|things?|stuff|ones)\w+ (?:did|was|had|is|have|were) (?:i|we|it|the|that)\b/,
  },
  {
    kind: "last",
    focus: "materials",
    rule: "what-with",
    when: /^what (?:did|have) (?:i|we) (?:use|used|put on|put in|put down)$|\b(?:what|whats|whatd|which)(?: \w+){0,3} (?:did|have|had|was|were|do|do) (?:i|we|it|the \w+|they|he|she)\b.*\b(?:use|used|using|put|stick|stuck|patch\w*|seal\w*|fix\w*|glu\w*|repair\w*|mend\w*|fill\w*|caulk\w*|cover\w*|tape\w*|paint\w*|grease\w*|lub\w*|oil\w*|smear\w*|slap\w*|squirt\w*|smother\w*|bond\w*|bed\w*|free\w*|bodge\w*|run|ran|laid|lay|pack\w*|sprayed?|attach\w*|fasten\w*|made|plug\w*|wrap\w*|bind|bound|hold|held|treat\w*|cure\w*|apply|applied|close\w*|stop\w*)\b.*\b(?:with|on|onto|over|in|into|around|round|under|for|to|of|across|behind|between|up|there|it)\b|\b(?:with what|what with|what stuff|what kind of|what type of|what sort of|what brand|what material|which (?:sealant|glue|tape|grease|sealer|material|stuff|product|kind|adhesive|oil|caulk)|what (?:sealant|glue|tape|grease|sealer|material|product|adhesive|oil|caulk|goop|compound|lube|paint|resin|screws|bolts|part|parts))\b|\bwhat (?:is|was|are|were) (?:the |that |my )?(?:\w+ ){1,4}(?:patched|sealed|made|glued|held|fixed|bedded|stuck|greased|repaired|packed|mended|caulked) (?:on |in |down |up |together )?(?:with|of|by)\b|\bwhats (?:on|in|holding|under|behind) (?:the|that|my)\b/,
    unless:
      /\b(?:last|latest) (?:thing|job|do|did|work)\b|\blast (?:do|done) \b|\bwhat did (?:i|we) last (?:do|fix)\b/,
  },
  {
    kind: "ever",
    rule: "doubted",
    when: /^(?:but |so |and )*(?:i|we) (?:thought|think|reckon|believe|could swear|couldve sworn|swear|feel like|have a feeling|seem to (?:remember|recall)|vaguely remember|remember|figured) .*\b(?:did|have|do|dont|didnt|havent) (?:i|we|you|they)$/,
  },
  {
    kind: "ever",
    rule: "ever",
    when: /\b(?:ever|never)\b|^(?:is|are|was) there (?:a |an |any )?.*\b(?:on record|recorded|logged|in the (?:log|book|records?))\b/,
    unless:
      /\b(?:what|which|how|when|where) (?:did|have|has|was|is|do)\b|\b(?:everything|all|list|whatever)\b/,
  },
  {
    kind: "last",
    focus: "state",
    rule: "state",
    when: /^(?:how|hows|howre)\b.*\b(?:doing|holding|getting on|getting along|looking|look|faring|coming along|going|behaving|holding up|hold up|held up|bearing up|working|work out|worked out|turn out|turned out|pan out|panned out|come out|came out|these days|now|at the moment|been|standing up|keeping|shaping|condition|shape|do)\b|\b(?:state|status|condition|shape|health) (?:of|is|with|on)\b|^hows\b|^how (?:is|are)\b|\bwhats (?:the )?(?:latest|word|news|up|happening|the story|the score|the deal) (?:on|with|about)\b/,
  },
  {
    kind: "last",
    rule: "last",
    when: /\b(?:last|latest|most recent|newest|previous|final)\b/,
    unless:
      /\bdid .*\b(?:hold|work|stick|take)\b|\b(?:did|does|do|has|have)\b.*\blast(?:ed)?(?: (?:well|okay|ok|long|at all|the \w+|through|until|till|any))?$|\bwhat .*\b(?:all|everything|jobs)\b/,
  },
  {
    kind: "last",
    focus: "what",
    rule: "first",
    when: /\b(?:first|earliest|original(?:ly)?)\b.*\b(?:time|thing|job|do|did|fix|repair|put|was)\b|\bdid (?:i|we) first\b/,
  },
  {
    kind: "list",
    rule: "list",
    when: /\b(?:list|everything|every|history|(?:work|jobs|repairs|fixes|maintenance|servicing) (?:done|made|carried|completed|performed|on|to|in)|all (?:the|my|that|jobs|work|repairs|i|weve|ive)|what (?:all|jobs|work|repairs|fixes|things|maintenance|projects|else)|which (?:jobs|repairs|fixes|things|work)|whats been (?:done|fixed|replaced|worked)|what has been|whats been|been happening|happened (?:to|with)|what have (?:i|we)|up to|what did (?:i|we)|what (?:did|has|have) (?:the|my|our) (?:\w+ ){1,2}(?:do|done|fix|fixed)\b|what happened|what (?:was|were) (?:i|we) (?:\w+ )?(?:busy|doing|working|up to|at)|what was (?:done|fixed|replaced|repaired)|what got|what ive|what weve|what i did|what we did|recap|summary|summarize|summarise|rundown|run (?:me|us)\b|run through|walk me|walk us|catch me up|log|record of|show (?:me )?(?:the|all|my)|what (?:jobs|work) (?:did|have)|overview|rundown|run down|breakdown|up to|story of|what were)\b/,
  },
  {
    kind: "ever",
    rule: "anyone",
    when: /^(?:has|have|did) (?:someone|anyone|anybody|somebody|he|she|they)\b/,
  },
  {
    kind: "last",
    focus: "what",
    rule: "how-done",
    when: /^how (?:did|have|was|were|had) (?:i|we|he|she|they|the|it|that|my|our)\b/,
    unless: /\b(?:hold|held|last|lasted|stand)\b/,
  },
  {
    kind: "holding",
    rule: "bare-state",
    when: /^(?!(?:when|what|which|who|where|why|how)\b)(?:\w+ ){1,6}(?:behaving|holding|tight|dry|solid|working|fine|ok|okay|sound|good|stuck|intact|on|up)(?: (?:since|after|now|yet|at all|there)\b.*)?$/,
    unless:
      /^(?:did|have|has|had|do) (?:i|we|you|anyone|anybody|he|she|they)\b|\b(?:whats|anything|list|last|latest|worth|should|do you think)\b/,
  },
  {
    kind: "holding",
    rule: "holding",
    when: /^any (?:more |further |signs? of |new )?(?:leaks?|drips?|trouble|problems?|issues?|movement|play|damp|water|wet) (?:from|at|in|with|on|of|since|under|around|round|about|coming)\b|^(?:is|are|isnt|arent|has|have|hasnt|havent|did|didnt|does|do|doesnt|dont|was|were|wasnt|still|will|can)\b(?! (?:i|we|you|he|she|they)\b)/,
  },
  {
    kind: "holding",
    rule: "still",
    when: /\b(?:still|do the trick|did the trick|is it|are they|has it|have they|did it|does it|did they|do they|any good|hold(?:ing|s)?|held|is that|are those)\b/,
    unless: /^(?:did|have|has|had|do) (?:i|we|you|anyone|anybody|he|she|they)\b/,
  },
  {
    kind: "ever",
    rule: "did-i",
    when: /^(?:did|have|has|had|havent|didnt|do|was|were|any record|is there)\b|\b(?:did|have) (?:i|we|anyone|anybody|you)\b/,
  },
];

/** What kind of question it is, by the first rule that fits; none means that its words name a thing at most. */
export const askedIn = (words: string): Asked | undefined =>
  [...IDIOMS, ...RULES].find(({ when, unless }) => when.test(words) && unless?.test(words) !== true);
