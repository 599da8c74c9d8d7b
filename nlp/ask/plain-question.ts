/** Sounds and openings before a question that say nothing: "so um hey, when did I ..." */
const OPENING =
  /^(?:(?:(?:now )?where was i|what was i (?:gonna|going to|about to) (?:say|ask)|so|and|but|um+|uh+|er+|hm+|all (?:up|told|in)|altogether|overall|in total|oh|ok|okay|right|well|hey|hi|hello|now|also|then|wait|actually|no|alright|listen|say|look|please|sorry|quick (?:one|question)|one more(?: thing)?|another (?:one|question)|just wondering|out of interest|by the way|btw|mate|buddy|good morning|morning|evening)\b[\s,.:;!-]*)+/;

/** Ways of asking around a question: "can you tell me when I ..." */
const WRAPPING =
  /^(?:(?:can|could|would|will) (?:you|u) (?:please |just )?(?=tell|show|remind|give|say|list|look|check|find|read|play)|please |pls |do you (?:know|remember|recall|happen to know) |any idea (?=when|what|how|where|which|who|if|why)|(?:i (?:forget|forgot|cant remember|can never remember|cannot remember|dont remember|dont recall|wonder|was wondering|dont know|need to know|want to know|have to know|gotta know|cant think|cant recall|couldnt tell you|have forgotten|lost track of|would like to know|have no idea)|id like to know|(?:just )?(?:need|needing|want|wanting|wanna|trying|got|gotta|like) (?:to )?(?:know|find out|remember|recall|work out|figure out|check|see|hear)|cant (?:recall|remember|think)|dont (?:recall|remember)|(?:no idea|not sure|forget|forgot|forgotten|wondering|curious)(?! why| how (?!many|much|long|often|old)| what (?!did|was|have|year|month|day))|im (?:wondering|not sure|trying to remember|curious)) (?=when|what|how|where|which|who|whether|if|why)|let me know |(?:i want|i wanna|id like|i would like|i need|let me|lets|can i|could i|may i) (?:to )?(?:see|hear|know|have|look at|find out) (?=what|when|how|where|which|who|why|whether|if|all|every|the list|the total|my list)|help me (?:remember|out) |wanna know |what i want to know is |remind (?:me|us) (?=what|when|how|which|who|where|why|if|again|of|about|once more)(?:again |once more )?(?:of |about )?|(?:tell|show|read) (?:him|her|them|(?:the|my) \w+) (?=what|when|how|which|who|where|whether|if|why)|tell (?:me|us) (?!to )(?:again |once more )?(?:of |about )?|(?:show|give) (?:me|us) (?!a hand|a break|a minute|a sec)|refresh my memory )+/;

const ASIDE_BEFORE =
  "(?:just )?(?:so (?:that )?i (?:have|get|got|know|keep) (?:it|this|that|things) (?:straight|right|clear|down)|so (?:that )?i know|to (?:be|make) (?:clear|sure|certain)|for (?:the|my own) (?:record|peace of mind|curiosity)|before i forget|while (?:i think of it|im at it|were at it))";
/** "Just so I have it straight, ...": why it is asked, and nothing told. */
export const ASIDE = new RegExp(
  `^\\W*(?:(?:and|so|now|ok|okay|well|right)\\W+)*${ASIDE_BEFORE}\\b[\\s,.:;-]*`,
  "i",
);

const ASKS_FOR =
  "(?:asks|is asking|are asking|keeps asking|keep asking|wonders|is wondering|wants to know|want to know|wants to hear|needs to know|would like to know|wants me to ask|says to ask)";
const ASKED_NEXT =
  "(?:whether|if|when|what|what['’]?s|how|who|where|which|why|did|do|does|have|has|had|is|are|was|were)";
/** "He also asks whether", "my sister is asking did we", "if I sell her and the man asks me is": what somebody else wants to know. */
const REPORTED = new RegExp(
  `^\\W*(?:(?:and|so|now|well|ok|okay)\\W+)*(?:(?:if|when|in case) (?:\\w+ ){0,8}?and )?(?:(?:if|when|in case) )?(?:(?:the|my|our|a|some|any|this) )?(?!(?:i|we|you|what|which|who|how|when|where|why|nobody|whoever)\\b)(?:\\w+ ){1,4}?(?:(?:also|now|still|just|even|only|always) )?${ASKS_FOR}(?: me| us| you)?(?: again| too| also)?,? (?=${ASKED_NEXT}\\b)`,
  "i",
);

/** Whether a text says what somebody else asks. */
export const isReported = (text: string): boolean => REPORTED.test(text);

/** "Kettle's on and the wife is asking when ...": what is said before somebody else's question, and that question. */
export const reportedBehind = (
  text: string,
): { readonly lead: string; readonly question: string } | undefined =>
  [...text.matchAll(/\b(?:and|but|so|cos|because|plus) (?=(?:the|my|our) \w)/gi)]
    .map(({ index, 0: joint }) => ({
      lead: text.slice(0, index).trim(),
      question: text.slice(index + joint.length),
    }))
    .find(({ lead, question }) => lead !== "" && isReported(question));

/** The question alone, without why it is asked or who else wants to know. */
export const questionAlone = (text: string): string => text.replace(ASIDE, "").replace(REPORTED, "");

/** Lower case, no apostrophes, no marks but question marks gone, one blank between words. */
export const plainQuestion = (text: string): string =>
  text
    .toLowerCase()
    .replace(/['’`]/g, "")
    .replace(/[^\p{L}\p{N}?]+/gu, " ")
    .replace(/\b(what|when|where|who|how|why)(d|ve)\b/g, (_, word: string, verb: string) =>
      verb === "d" ? `${word} did` : `${word} have`,
    )
    .trim();

export type Unwrapped = {
  readonly words: string;
  /** The words ask to be told: "remind me". */
  readonly wrapped: boolean;
  readonly marked: boolean;
};

export const unwrap = (text: string): Unwrapped => {
  const plain = plainQuestion(text);
  const marked = plain.endsWith("?");
  const bare = plain.replace(/\?/g, " ").replace(/ +/g, " ").trim().replace(OPENING, "");
  const words = questionAlone(bare).replace(WRAPPING, "").replace(OPENING, "");
  return { words, wrapped: words !== bare, marked };
};
