import type { Rule } from "./asked.ts";

const FAILINGS =
  "(?:failures|breakdowns|breakages|blowouts|blow outs|flats|punctures|leaks|relapses|comebacks|repeat failures)";
const CURES =
  "(?:cure[ds]?|fix(?:ed|es)?|stop(?:ped|s)?|sort(?:ed|s)?|solved?|settled?|mend(?:ed|s)?|work(?:ed|s)?|silenced?|ended|tamed|killed|quietened|quieted|did the (?:trick|job)|put paid to|put an end to|put a stop to|got rid of|made it stop)";

/** Turns of phrase that settle what is asked before the plainer words are looked at. */
export const IDIOMS: readonly Rule[] = [
  {
    kind: "last",
    focus: "who",
    rule: "whom-to-thank",
    when: /^(?:who|whom)\b.*\b(?:to thank|do (?:i|we) thank|(?:gets?|deserves?) (?:the )?(?:credit|thanks|blame)|to blame|do (?:i|we) owe)\b/,
  },
  {
    kind: "ever",
    rule: "any-record",
    when: /^(?:is there |do (?:i|we|you) have |have (?:i|we|you) (?:got )?)?any (?:record|trace|evidence|proof|mention|entry|sign in the log) (?:of|that) (?:me|us|my|our|anyone|anybody|someone|him|her|them|i|we|ever|having)\b/,
  },
  {
    kind: "last",
    focus: "cure",
    rule: "what-cured",
    when: new RegExp(
      `\\b(?:what|which)\\b(?:.*\\b(?:finally|eventually|at last|in the end)\\b.*\\b${CURES}|.*\\b${CURES}\\b.*\\b(?:in the end|at last|for good|once and for all|finally|eventually))\\b|^(?:so |and )*what (?:cured|solved|silenced|tamed|killed|quieted|quietened|put paid to|put an end to|put a stop to|got rid of)\\b`,
    ),
    unless: /\b(?:still|left|ought|should|must|need\w*)\b/,
  },
  {
    kind: "holding",
    rule: "good-on",
    when: /^(?:are )?(?:we|i|you) (?:all |still )?(?:good|ok|okay|fine|sorted|set|right|covered|safe|alright) (?:on|for|with|as for|when it comes to) (?!(?:to )?(?:go|the (?:road|trip|off)|a trip|departure|travel|money|cash)\b)/,
  },
  {
    kind: "count",
    rule: "times-failed",
    when: new RegExp(
      `^(?!(?:any|what|whats|which|list|show|the)\\b)(?:\\w+ ){0,6}${FAILINGS}(?: (?:so far|to date|ever|on record))?$`,
    ),
  },
  {
    kind: "said",
    rule: "was-saying",
    when: /\b(?:i|we) (?:was|were|been) (?:saying|telling you|on about|talking|going on|muttering|moaning|rambling)\b(?!.*\b(?:id|wed|i would|going to)\b)/,
  },
  {
    kind: "open",
    rule: "my-list",
    when: /\b(?:read|show|give|tell|send|run|go|hand)\b(?: \w+){0,3} (?:the|my|our) (?:whole |full |entire |job |jobs |work |fix it |honey do )?list(?! (?:of|for|from)\b)|^(?:my|our|the) list$/,
    unless: /\b(?:shopping|buy|parts|store|everything|done|did)\b/,
  },
];
