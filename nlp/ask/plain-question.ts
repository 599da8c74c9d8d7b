/** Sounds and openings before a question that say nothing: "so um hey, when did I ..." */
const OPENING =
  /^(?:(?:(?:now )?where was i|what was i (?:gonna|going to|about to) (?:say|ask)|so|and|but|um+|uh+|er+|hm+|all (?:up|told|in)|altogether|overall|in total|oh|ok|okay|right|well|hey|hi|hello|now|also|then|wait|actually|no|alright|listen|say|look|please|sorry|quick (?:one|question)|one more(?: thing)?|another (?:one|question)|just wondering|out of interest|by the way|btw|mate|buddy|good morning|morning|evening)\b[\s,.:;!-]*)+/;

/** Ways of asking around a question: "can you tell me when I ..." */
const WRAPPING =
  /^(?:(?:can|could|would|will) (?:you|u) (?:please |just )?(?=tell|show|remind|give|say|list|look|check|find|read|play)|please |pls |do you (?:know|remember|recall|happen to know) |any idea (?=when|what|how|where|which|who|if|why)|(?:i (?:forget|forgot|cant remember|can never remember|cannot remember|dont remember|dont recall|wonder|was wondering|dont know|need to know|want to know|have to know|gotta know|cant think|cant recall|couldnt tell you|have forgotten|lost track of|would like to know|have no idea)|id like to know|(?:just )?(?:need|needing|want|wanting|wanna|trying|got|gotta|like) (?:to )?(?:know|find out|remember|recall|work out|figure out|check|see|hear)|cant (?:recall|remember|think)|dont (?:recall|remember)|(?:no idea|not sure|forget|forgot|forgotten|wondering|curious)(?! why| how (?!many|much|long|often|old)| what (?!did|was|have|year|month|day))|im (?:wondering|not sure|trying to remember|curious)) (?=when|what|how|where|which|who|whether|if|why)|let me know |(?:i want|i wanna|id like|i would like|i need|let me|lets|can i|could i|may i) (?:to )?(?:see|hear|know|have|look at|find out) (?=what|when|how|where|which|who|why|whether|if|all|every|the list|the total|my list)|help me (?:remember|out) |wanna know |what i want to know is |remind (?:me|us) (?=what|when|how|which|who|where|why|if|again|of|about|once more)(?:again |once more )?(?:of |about )?|tell (?:me|us) (?!to )(?:again |once more )?(?:of |about )?|(?:show|give) (?:me|us) (?!a hand|a break|a minute|a sec)|refresh my memory )+/;

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
  const words = bare.replace(WRAPPING, "").replace(OPENING, "");
  return { words, wrapped: words !== bare, marked };
};
