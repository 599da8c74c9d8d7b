import { type Rule, upTo } from "./rules.ts";

const IS =
  "(?:it(?:'s| is| was| were| cost| came to)|that(?:'s| was| is)|they were|was|were|is|its|thats|cost|came to|should (?:be|have been|say|read))";
const DENY =
  "(?:wasn't|was not|weren't|were not|isn't|is not|ain't|didn't (?:cost|use)|did not (?:cost|use)|never was|don't mean)";
const A = "(?:the |a |an |any |at |on |in )?";
const END =
  "(?: (?:kind|sort|type|variety|stuff|sorry|after all|in fact|actually|instead))?(?=\\s*(?:$|[.!;]|,? (?:and|also|plus) ))";
const SAID =
  "(?:(?:i|you)(?:'ve|'d| have| had)?(?: just)? (?:(?:keep|kept) (?:saying|calling it|writing|typing)|said|called (?:it|that)|wrote|written|put|typed|logged|entered|noted|told you|meant to say)(?: down)?|i say)";
const BUT =
  "(?:(?:but|and|when) )?(?:it's really|it is really|it's|its|it is|it was (?:really|actually)|it was|i mean|i meant|i was (?:talking|thinking|speaking) (?:about|of)|i was on about|meaning|that's|that was|(?:it |that )?(?:should|ought to) (?:be|have been|read|say|have said))";

const DAY =
  "(?:(?:last |this |the )?(?:[a-z]+day|morning|afternoon|evening|night|week|weekend)(?: (?:morning|afternoon|evening|night|before|before last|last))?|the day before)";

const WEEKDAY = "(?:mon|tues|wednes|thurs|fri|satur|sun)day";

/** What is said to be one thing and no other, in its plainest words: "no, it was B not A". */
export const CONTRASTS: readonly Rule[] = [
  {
    when: /^(?:(?:can you|please|and|oh|just) )*(?:put|stick|add|mark) (\$?[\d.]+(?: (?:dollars|bucks|pounds|quid|euros?))?|(?:[a-z]+ ){1,4}(?:dollars|bucks|pounds|quid|euros?)) (?:on|against|for|to|down for) (?:that|it|this)(?: one)?(?:$|[,.;].*)/i,
    to: "no, it was $1",
  },
  {
    when: new RegExp(
      `^(?:it |that |they |i )?${DENY} ${A}(${upTo(5)})(?:[,;.:]| -+| –|,? but)? (?:but )?(?:${IS}|only|just|rather|merely) ${A}(${upTo(6)})${END}`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^not ${A}(${upTo(3)})(?:[,.;:]| but| it was| it's| its) (?:but |it was |it's |its |that's |rather )*${A}(?!not\\b)(${upTo(4)})${END}`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^(?:the )?(${upTo(3)}) (?:was|is) (?:wrong|a mistake|a typo|a slip|incorrect|off)[,.;:]? (?:and |but )?${IS} ${A}(${upTo(6)})${END}`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^${SAID} (?:it was |it's |as )?${A}(${upTo(4)})[,.;:]? ${BUT} ${A}(${upTo(6)})${END}`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^(?:by|for|where i (?:said|say|put|wrote)) ${A}(${upTo(4)}),? (?:i (?:mean|meant|should have said)|read) ${A}(${upTo(6)})${END}`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^did i (?:say|put|write|tell you) ${A}(${upTo(4)})\\? *(?:i meant |i mean |it was |it's |make that |sorry,? |should be |that's )*${A}(${upTo(5)})${END}`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^(?:please )?(?:change|swap|replace|correct|switch) ${A}(${upTo(4)}) (?:to|for|with|by|into) ${A}(${upTo(4)})(?: (?:in|on|for) (?:that (?:one|note|record|entry)|the (?:record|entry|log|note|last (?:one|note|entry))|my last (?:note|entry)))(?: please)?[.!\\s]*$`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^(?:it |that )${DENY} ${A}(${upTo(3)})[.;,] *${A}(?!(?:i|we|it|that|so|just|not)\\b)(${upTo(2)})[.!]?$`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^${A}(${upTo(3)})\\? *(?:no|nope|sorry|oops|i meant?|make that|it was|should be)[,.]? (?:no,? |sorry,? |i meant? |make that |it was |should be )*${A}(${upTo(4)})[.!]?$`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^(?:(?:i|we|he|she|they) )?(?:did|done|fixed|made|finished|had) (?:that|it|this|them|those|both)(?: one| job)? (?:on )?(${DAY}),? (?:and )?not (?:on )?(${DAY})[.!]?$`,
      "i",
    ),
    to: "no, it was $1 not $2",
  },
  {
    when: new RegExp(
      `^(?:the |my |our )?(${upTo(3)}) (?:was|were) (?:never|not even|not) (?:touched|replaced|changed|done|used|opened|fitted|swapped|fixed)[,.;]?(?: and| but)? (?:it|that|'?twas)(?: was|'s)? (?:the |a |an |my )?(${upTo(4)}) (?:that |which )?(?:i|we|he|she|they) \\w+(?: \\w+)?[.!]?$`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: new RegExp(
      `^(?:on )?(${WEEKDAY}) (?:i|we|he|she|they)(?:'d| had)? (?:was|were|been|had) [^.!?;]{3,60}[.;,] *(?:so )?(?:it was )?(?:on )?(${WEEKDAY})(?: it was| that was)?[.!]?$`,
      "i",
    ),
    to: "no, it was $2 not $1",
  },
  {
    when: /^(?:[^.!?;]{0,60}(?:[,;]| and| so| but| that) )?(?:the )?(?!(?:i|we|you|he|she|it|that|they|this|all|everything)\b)([^\s.!?;,]+(?: [^\s.!?;,]+)?) (?:was|is|were) (?:right|correct)(?: after all| all along| in the first place| the first time)?[.!]*$/i,
    to: "no, it was $1",
  },
  {
    when: new RegExp(`^${A}(${upTo(4)}) it was,? not ${A}(${upTo(3)})[.!]?$`, "i"),
    to: "no, it was $1 not $2",
  },
  {
    when: new RegExp(
      `^(?:it's|that's|its) ${A}(${upTo(3)}) (?:i'm|im|i am|i was) talking about,? not ${A}(${upTo(3)})[.!]?$`,
      "i",
    ),
    to: "no, it was $1 not $2",
  },
  {
    when: new RegExp(
      `^(?=[$£€]?\\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[a-z]+teen|[a-z]+ty|a hundred|[a-z]+day\\b)(${upTo(5)}),? not (?=[$£€]?\\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[a-z]+teen|[a-z]+ty|a hundred|[a-z]+day\\b)(${upTo(4)})[.!]?$`,
      "i",
    ),
    to: "no, it was $1 not $2",
  },
];
