const SLIPPED = [
  "mis ?read",
  "misspoke",
  "misheard",
  "mistyped",
  "misremembered",
  "transposed",
  "typo",
  "read (?:it|that|the \\w+) (?:wrong|upside down|backwards|wrongly)",
  "(?:got|had|wrote|said|typed|put|remembered) (?:it|that|them|(?:the|my|those) \\w+) (?:down )?(?:wrong|upside down|backwards|mixed up|muddled|confused|crossed|back to front|the wrong way(?: round| around)?)",
  "(?:mix|muddle|confuse|mixed|muddled|confused) (?:up )?(?:it|that|them|those|(?:the|my) \\w+(?: and (?:my )?\\w+)?)(?: up| round| around)?",
  "mixed up \\w+(?: and \\w+)?",
  "(?:swapped|reversed) (?:them|those|the (?:digits|figures|numbers|two|sides|words))",
  "my (?:mistake|bad|error|fault)",
  "wrong (?:slip|receipt|line|number|figure|day|side|one|tape|word|name|tank|tin|tube)",
  "fat fingers?",
  "slip of the (?:tongue|thumb|pen)",
  "counted wrong",
  "(?:looked|looking) at the wrong",
];

/** Words that own to a slip: "I read it backwards". Source of a regular expression, on plain words. */
export const OWNS_UP = `(?:${SLIPPED.join("|")})`;
