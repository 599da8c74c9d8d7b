import { topicOf } from "../ask/topic.ts";
import { type Rule, upTo } from "./rules.ts";

const JOB =
  "(?:job|one|thing|fix|patch|repair|entry|note|record|bit|work|replacement|swap|seal|weld|service)";
const HEAD =
  "(?:(going back to|back to|back on|about|regarding|re|concerning|as regards|as for|remember|with regard to|on the subject of)|(on|for|with)|) ?";
const OF = `(?: ${JOB})*(?: (?:i|we) (?:did|told you about|mentioned|logged|put in))?(?: (?:earlier|before|last (?:week|month|year|spring|summer|autumn|fall|winter)|back in \\w+|in \\w+|from \\w+(?: \\w+)?))?`;
const HEADED = new RegExp(
  `^(?:also,? |and |oh,? |now,? )*${HEAD}(?:the|that|my|our|those|this) ((?:[\\w'-]+ ){0,3}?[\\w'-]+?)${OF}\\s*([,:;?]| -+|—|) ((?:it|that|this|they|i|we|my|the|our|a|put|make|change|should|cost|no|actually|sorry)\\b.+)$`,
  "i",
);

type Rest = { readonly when: RegExp; readonly to: (rest: string) => string };

/** What is said of the thing named first, as one statement of it. */
const RESTS: readonly Rest[] = [
  {
    when: /^(?:no,? |actually,? |sorry,? )*(?:it|that|this|they|those|i did (?:it|that)|we did (?:it|that)|it got done)(?:'s| (?:was|were|is|are|cost|came to|should be|should have been|should say))?(?: actually| really)? (?=\S)(?!(?:is|has|had|needs|will|did|does|looks|seems|feels|started|keeps|still|won't|didn't|doesn't)\b)/i,
    to: (rest) => `was ${rest}`,
  },
  { when: /^(?:i|we) (?:actually |really )?used (?=.* not )/i, to: (rest) => `was ${rest}` },
  {
    when: /^(?:put|make (?:it|that)|change (?:it|that) to|should be|should say|should have been|cost|it cost|the (?:cost|price|date|bill) (?:was|is|should be)) /i,
    to: (rest) => `was ${rest}`,
  },
];

const BY = /^((?:my|the|our|a) (?:[\w-]+ ){1,3}?)did (?:it|that|that one|this)(?:,? not me)?[.!]?$/i;

const said = (rest: string): string | undefined => {
  const by = BY.exec(rest)?.[1];
  if (by !== undefined) return `was done by ${by.trim()}`;
  const found = RESTS.find(({ when }) => when.test(rest));
  return found?.to(rest.replace(found.when, ""));
};

const NUMBERISH =
  "(?:[$£€R]?\\d|(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thir|fif|twen|for|six|seven|eigh|nine|a hundred)\\w*|the \\w+(?:st|nd|rd|th|day)\\b|(?:mon|tues|wednes|thurs|fri|satur|sun)day|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\\w*|last |yesterday)";
const SIDE =
  "(?:on |at |in )?(?:the |my )?(?:left|right|front|rear|back|near|off|street|curb|kerb|door|driver'?s?|passenger)\\b";

/** "Change the bearing to 85 dollars", "the bearing was 85 not 80": an older record and its value. */
const SET: readonly Rule[] = [
  {
    when: new RegExp(
      `^(?:please )?(?:make|correct|amend|update) (?:the |that |my )(${upTo(4)})(?: ${JOB})?(?: (?:to|as|at|down as|down to|be|for|into))? (?:the (?:cost|price|date) )?(?=${NUMBERISH})(\\S.{0,40})$`,
      "i",
    ),
    to: "no, the $1 was $2",
  },
  {
    when: new RegExp(
      `^(?:please )?(?:change|set|put|move) (?:the |that |my )(${upTo(4)})(?: ${JOB})? (?:to|as|at|down as|down to|into) (?:the (?:cost|price|date) )?(?=${NUMBERISH})(\\S.{0,40})$`,
      "i",
    ),
    to: "no, the $1 was $2",
  },
  {
    when: new RegExp(
      `^(?:for|on) (?:the |that |my )(${upTo(4)})(?: ${JOB})? (?:put|make it|say|read) (?=${NUMBERISH})(\\S.{0,40})$`,
      "i",
    ),
    to: "no, the $1 was $2",
  },
  {
    when: new RegExp(
      `^(?:the |that |my )(${upTo(4)})(?: ${JOB})? (?:was|were|cost|came to|is) (?=${NUMBERISH}|${SIDE})(${upTo(5)},? not .{1,30})$`,
      "i",
    ),
    to: "no, the $1 was $2",
  },
  {
    when: new RegExp(
      `^(?:the |that |my )(${upTo(4)}) ${JOB} (?:was|happened|got done) (?:back )?(?:in|on) (?=${NUMBERISH})(${upTo(4)})[.!]?$`,
      "i",
    ),
    to: "no, the $1 was in $2",
  },
];

const isNamed = (thing: string): boolean => (topicOf(thing).named[0]?.sure ?? 0) >= 0.55;

/** "Going back to the bearing, it was the right wheel": an older record named first, then what was wrong with it. */
export const headed = (text: string): string | undefined => {
  const set = SET.find(({ when }) => isNamed(when.exec(text)?.[1] ?? ""));
  if (set !== undefined) return text.replace(set.when, set.to);
  const [, plainly, , thing = "", mark = "", rest = ""] = HEADED.exec(text) ?? [];
  if (thing === "" || (mark === "" && plainly === undefined && !/ not /i.test(rest))) return undefined;
  if (!isNamed(thing) || rest.split(/\s+/).length > 12) return undefined;
  const put = said(rest);
  if (put === undefined) return undefined;
  return `no, the ${thing} ${put}`;
};
