import type { Moment } from "../../shared/reading.ts";
import { asksInClauses, asksInPart, isAllAsking } from "./in-part.ts";
import { periodIn } from "./period.ts";
import { plainQuestion, type Unwrapped, unwrap } from "./plain-question.ts";
import { topicOf } from "./topic.ts";

const SUBJECT = "(?:i|we|you|u|he|she|they|it|anyone|anybody|someone|somebody|there)";
const THING =
  "(?:the|that|this|those|these|my|our|his|her|its|their|any|anything|all|both|every|everything|each|either|a|an)";
const HOLDS =
  "(?:hold|last|work|stop|come|go|leak|help|take|survive|stay|cost|get|break|fail|let|give|need|make|start|quit|keep|stick|drip|crack|peel|tear|do its|do the|do their|do any|ever|cure|pass|run|feel|look|turn|see|have|want|happen|finally|actually|really|shut|quiet|quieten|silence|kill|sort|solve|settle|calm)";
const BEEN =
  "(?:been|held|lasted|ever|gone|done its|done their|done the|stayed|come|given|worked|kept|got|had|stuck|survived|stopped|failed|leaked|let|broken|cost|needed|seen|started|made|outlived|behaved)";
const AUX =
  "(?:did|do|does|have|has|had|is|are|was|were|am|can|could|should|shall|will|would|must|might|didnt|dont|doesnt|havent|hasnt|isnt|arent|wasnt|shouldnt)";

/** Openings that make a question without a mark, on plain words. */
const ASKS: readonly RegExp[] = [
  new RegExp(`^(?:when|where|why|how|who|whom|what|which) ${AUX}\\b`),
  /^(?:whats|whens|wheres|whos|hows|howre|whatre|whatd|whatve|howd|whend|whered|whyd|whod)\b/,
  /^how (?:many|much|often|long|far|old|soon|come|big|well|bad|recently)\b/,
  /^what (?!a\b|an\b|i\b|we\b|he\b|she\b|they\b|you\b|happened (?!with the|with my|to the|to my|to that|with that)|with\b|it\b|the (?:heck|hell)\b|else can)\w+/,
  /^(?:with|by|in|on|for|to|since|from|at) (?:what|which|whom|how)\b/,
  /^which (?!is\b|was\b|i\b|we\b|means\b|meant\b|reminds\b|explains\b|makes\b|made\b|has\b|had\b|are\b|were\b|it\b|the\b)\w+/,
  /^which (?:is|was|are|were|has|had) (?:the|my|our|it|that)\b/,
  /^(?:who|whose) (?!knew|cares|would|knows|said i)\w+/,
  /^(?:did|didnt) (?:i|we|you|u|he|she|anyone|anybody|someone|somebody|there)\b/,
  new RegExp(`^(?:did|didnt) (?:it|they|that|those)\\b.*\\b${HOLDS}\\b`),
  new RegExp(`^(?:did|didnt) ${THING} .*\\b${HOLDS}\\b`),
  /^(?:did|didnt) (?:\w+ ){1,3}(?:ever|hold|last|work|survive)\b/,
  new RegExp(`^(?:do|dont) (?:${SUBJECT}|the \\w+ still|my \\w+ still|any)\\b`),
  new RegExp(`^(?:does|doesnt) (?:${SUBJECT}|${THING})\\b`),
  /^(?:have|havent|had) (?:i|we|you|they)\b/,
  new RegExp(`^(?:have|havent) ${THING} .*\\b${BEEN}\\b`),
  new RegExp(`^(?:has|hasnt) (?:${SUBJECT}|${THING})\\b`),
  /^has \w+ (?:\w+ )?(?:ever|been|done|held|fixed|replaced)\b/,
  new RegExp(`^(?:is|are|isnt|arent|am) (?:${SUBJECT}|${THING})\\b`),
  new RegExp(
    `^(?:was|were|wasnt|werent) (?:${SUBJECT}|${THING})\\b(?!.* (?:so i|so we|and i|then i|but i|not the) )`,
  ),
  new RegExp(`^(?:can|could|should|shall|will|would|must) (?:${SUBJECT}|${THING})\\b`),
  /^any(?:thing|one|body)? .*\b(?:left|need|needs|open|outstanding|due|do|doing|broken|still|should|pending|undone|coming|to buy|to get|missing|waiting|failed|hanging|unfinished|record|idea|look|looked|note)\b/,
  /^anything (?:left|open|due|outstanding|else)$/,
  /^any(?:thing|body|one)? (?!way|who|how)(?:\w+ ?){1,9}$/,
  /^(?:ever|never) (?:\w+ed|done|had|been|put|swapped|cut|bought|got)\b(?! (?:again|since))/,
  /^ever (?!(?:since|so|after|again|more|the|such|loud|lasting|faithful)\b|\w+(?:ing|ful|ly)\b)\w+ \w+/,
  /^(?:i|we|you|u|he|she|they) ever (?!(?:so|since|need|want|see|saw|knew|know|had|met|get (?:a|the) chance)\b)\w+ (?!.*\b(?:ill|i will|well|we will|id|it will|itll|and then)\b)/,
  /^(?:all|any|total) (?:of )?(?:the |my |our |that )?(?:money|cash|dough|dollars|bills|spending|outlay) (?:that )?(?:i|we|ive|weve|that went|thats gone|went|gone|sunk|spent|put)\b(?!.*\b(?:and|but|is|was|still|so|yet|isnt|wasnt|didnt)\b)/,
  /\b(?<!\b(?:know|remember|recall|matter|sure|forget|forgot|say|tell|of) )(?:what|which) (?:day|date|month|year|week) (?:was it )?(?:i|we|he|she|they) \w+/,
  /^(?:the )?(?:\w+ ){1,4}(?:share|slice|portion|proportion) of (?:that|it|this|them|the total|the bill)$/,
  /\b(?:but|or) (?:is|are|has|have|did|does|was|were|isnt|arent|hasnt|didnt) (?:it|they|she|he|not)$/,
  /^total (?:nights|miles|kms?|kilomet\w+|distance|trips|spent|costs?|spend|spending|bill|for|of|so far|on|in|to date|money|outlay|number)\b/,
  /^everything$/,
  /^(?:did|does|has|have) \w+ing\b/,
  /^(?:when|how|why|where|by whom|with what) (?:last )?\w+(?:ed|en|ne|pt|lt|nt)$/,
  /^(?:the )?(?:last|latest|most recent) (?:\w+ ){0,2}(?:job|work|repair|fix|time|service|check|look|replacement|change|go)\b(?!.*\b(?:was|were|is|held|let|failed|didnt|hasnt)\b)/,
  /^(?:list|count|add up|tot up|tally up|tally|total up|reckon up|work out|sum up|sum|summarize|summarise|recap|look up|find|search|pull up|bring up|dig (?:up|out)|run through|(?:run|walk|take) (?:me|us)|read|play|go over|catch (?:me|us) up)\b(?:(?! (?:is|was) ).)*$/,
  /^(?:the )?(?:last|latest|most recent|previous) (?:time|thing|job|work|fix|repair|word|note)s?\b(?!.*\b(?:was|were|is|held|let|failed|didnt|hasnt)\b)/,
  /^(?:the )?(?:status|state|history|cost|costs|price|spending|shopping list|to do list|todo list|to do|todo|todos|open jobs|open items|open list|list|mileage|odometer|running total|story)(?: (?:of|on|for|with|so far|please|in|this|since|now|to date)\b.*)?$/,
  /^(?:is|are) (?:\w+ ){1,3}(?:still|ok|okay|good|due|holding|dry|tight|fixed|done|overdue|safe)\b/,
  /^(?:the )?(?:date|day|month|year|time|last time) (?:i|we|that|when|it|of)\b/,
  /^(?:everything|all|anything (?=i |we |to do with|about the|on the)) ?(?:i|we|ive|weve|thats|that (?:i|we|was|were|has|have|needs?|still)|done|on the|about the|to do with)\b(?!.*\b(?:is|was|are|were|looks|seems|works)\b)/,
  /^any(?:thing)? (?:to (?:buy|do|get|order|fix|sort|check|report)|loose ends|jobs|faults|todos|news on)\b/,
  /^(?:the )?(?:number|amount|sum|total|cost|price|date|year|day|name|list|count) (?:of|for|on)\b/,
  /\bwhich (?:one|of (?:them|those|these)) (?:lasted|held|worked|stuck|did|was)\b/,
  /\b(?:when|why|how|who|where|with what|how much|how often|how long ago)$/,
  /^any (?:leaks?|drips?|trouble|problems?|issues?|movement|play|sign|signs|word|news|record|change|more (?:leaks?|drips?|trouble)) (?:from|at|in|with|on|of|since|under|around|round|about)\b/,
  /^(?:all |the |any |every )?(?:jobs?|work|repairs?|fixes|maintenance) (?:done|since|made|carried out|from|in|on|so far|to date|completed)\b(?: \w+){0,5}$/,
  /^(?:a |the |quick )?(?:rundown|run down|recap|overview|round ?up|breakdown|summary|history|story|list) (?:of|on)\b/,
  /^show (?:everything|all|what|the|my|anything|me|us|last|this|just)\b/,
  /^what happened (?!was\b|is\b|here\b|next\b|then\b|when\b|and\b)(?:\w+ ?){1,8}$/,
  /\bwhich (?:one )?(?:worked|lasted|held|stuck|stood|did|stayed) (?:up )?(?:the )?(?:best|longest|most)\b/,
  /^how deep\b/,
  /^(?:spent|paid)(?: (?:out|on (?:the|my|our) \w+|to (?:the|my|our) \w+|so far|all told|in total|altogether|between|since|in|during|over|from|and))*$/,
  /^(?:and |just |so |only )*what(?:s| is| else| is left| is there| there is)? (?:left )?to (?:buy|get|order|do|fix|bring|mend|sort|pick up)\b/,
  /^whether\b/,
  /\bwhat (?:was|were) (?:that|it|those|they)(?: again| about| now| all about)?$/,
  /\b(?<!(?:know|remember|matter|see|believe|guess|forget|knows|of|no) )how (?:much|many|often|long)(?: (?:al+ ?together|in (?:all|total)|total|so far|all (?:told|up|in)|to date|(?:is|was|were) (?:that|it|they)|ago|already|now|for (?:the lot|everything|all of it)))*$/,
  /^(?:(?:just|only) )?(?:the (?:things|stuff|bits|parts) |what(?:ever)? )(?:i|we|im|were|ive|weve) (?:still |also )?(?:need|have|got|gotta|must|should|ought|supposed|am supposed|are supposed)(?: got)?(?: to)? (?:be )?(?:buy|get|pick up|order|do|fix|sort|see to|mend|check|ordering|buying|getting|doing|fixing)\b(?!.*\b(?:is|was|are|were)\b)/,
];

/** Openings of statements that look like questions. */
const TELLS: readonly RegExp[] = [
  /^(?:to|how about that|how bout that|how about i|what do you know|what can i say|what are the odds|who knew|guess what|when i|when we|when it|when the|when you|where the|where it|where i|how i|why i|what (?:i|we)(?! (?:still |also )?(?:need|have|got|gotta|must|should|ought)(?: to)? (?:buy|get|pick up|order|do|fix|sort|see to|mend)\b)|what happened(?= (?:was|is|here|next|then|when|and)\b))\b/,
  /^(?:have|had) (?:to|the dealer|a |an |my |him|her|them|someone)\b/,
  /^(?:do|did) (?:it|them|that|the \w+|both|all|some)(?: \w+)?$/,
  /^(?:would|can|will) you believe\b/,
];

/** "Did I mention that I replaced the pump?" tells; "did I mention a smell of gas" asks. */
const MENTIONS = /^did i (?:mention|tell you|say)\b(?! (?:anything|something|what|about|when|if))(.*)$/;
const CLAUSE = /\b(?:i|we|it|its|im|ive|he|she|they|is|was|has|had|are|were)\b/;

const mentions = (words: string): boolean => {
  const told = MENTIONS.exec(words)?.[1];
  return told !== undefined && (told.trim() === "" || CLAUSE.test(told) || topicOf(told).actions.length > 0);
};

/** Marks after a statement that ask for nothing but a nod. */
const TAG =
  /(?: (?:eh|huh|innit)|(?:,|^|\.|!) *(?:right|ok|okay|huh|eh|yeah|yes|no|you know|see|get it|got it|capisce|innit|hey|can you believe (?:it|that)|believe it|how about that|who knew|guess what|know what i mean|what are the odds|isnt that (?:great|nice|something)|how cool is that|fair enough|is it not|are we clear)) *\?+\s*$/i;

const inText = (moment: Moment, text: string): Unwrapped => unwrap(periodIn(text, moment).rest);

const NOTED =
  /^((?:\w+ ){1,4})(?:work|jobs?|repairs?|costs?|spend|spending|fixes|expenses?|history|total|failures|breakdowns|breakages|blowouts)(?: (?:done|made|so far|to date|altogether))?$/;

/** "Anode date", "topper fixes failed count": what is wanted of a thing named stands last. */
const WANTED =
  /^(?!(?:wrong|right|bad|no|not|change|fix|that|this|the date)\b|.*\b(?:i|we|he|she|they|got|put|set|cut|wrote|(?!failed\b|needed\b|used\b)\w+ed)\b)((?:\w+ ){1,6})(?:date|count|number of|how many)$/;

/** "Electrical cost, 2022." */
const asksInNouns = (words: string): boolean => {
  if ((topicOf(WANTED.exec(words)?.[1] ?? "").named[0]?.sure ?? 0) >= 0.6) return true;
  const topic = topicOf(NOTED.exec(words)?.[1] ?? "");
  return topic.systems.length > 0 || (topic.named[0]?.sure ?? 0) >= 0.9;
};

/** A question that opens like a statement is short when it is one. */
const LONG_WORDS = 20;
/** A question word with its verb turned round asks at any length. */
const PLAINLY = new RegExp(
  `^(?:when|where|why|how|who|what|which) ${AUX} (?:i|we|you|the|it|that|my|our)\\b|^how (?:many|much|often|long)\\b|^(?:did|have) (?:i|we) (?:ever|already)\\b`,
);

const asks = (words: string): boolean =>
  PLAINLY.test(words) ||
  (words.split(" ").length <= LONG_WORDS && ASKS.some((pattern) => pattern.test(words)));
const tells = (words: string): boolean => mentions(words) || TELLS.some((pattern) => pattern.test(words));

/** Whether a sentence asks in so many words; for one among sentences that tell. */
export const asksPlainly = (sentence: string, moment: Moment): boolean => {
  const { words, marked } = inText(moment, sentence);
  return marked || PLAINLY.test(words);
};

const CLAUSES = /[,:;]\s+|\s-+\s/;

/** "The loo, what did we last do to it": the thing first, then the question about it. */
/** "I thought we sealed the roof too, did we?" */
export const DOUBTED =
  /^(?:but |so |and )*(?:i|we) (?:thought|think|reckon|believe|could swear|couldve sworn|swear|feel like|have a feeling|seem to (?:remember|recall)|vaguely remember|remember|figured) .*\b(?:did|have|has|do|dont|didnt|havent) (?:i|we|you|they)$/;

const asksAtTheEnd = (sentence: string, moment: Moment): boolean => {
  const clauses = sentence.split(CLAUSES);
  const end = clauses.at(-1) ?? "";
  if (clauses.length < 2 || sentence.split(/\s+/).length > LONG_WORDS) return false;
  const { words } = inText(moment, end);
  return (
    PLAINLY.test(words) ||
    TURNED_ABOUT_IT.test(words) ||
    TELL_ME.test(plainQuestion(end)) ||
    (/^(?:when|where|why|how|what|which|who)\b/.test(words) && asks(words))
  );
};

/** "That plastic bubble over the bath is it tight": how it is, asked behind its name. */
const HOW_IT_IS_BEHIND =
  /^(?:(?:and|so|but|now) )*(?:that|the|my|our|this|those|these) (?:(?!(?:is|are|was|were|has|have|had|did|does)\b)\w+ ){1,9}(?:is|are|was|were|has|have|did|does) (?:it|they|that|she|he) (?:still |ever |all )?(?:tight|dry|ok|okay|good|fine|solid|sound|holding|working|stuck|up|on|held|hold|lasted|last|worked|work|stayed|stay|behaving|leaking|close|closing|shut|open|run|running)\b(?: \w+){0,3}$/;

/** "Before I drive off, read me the list" */
const TELL_ME =
  /^(?:read|show|give|tell|send|list|hand) (?:me|us) (?:(?:what|when|how|who|which|where)\b|(?:the|my|our|that|everything|all)\b.*\b(?:list|jobs|total|history|todos?|rundown|summary|costs?|left|open|outstanding|done))/;

/** "The roof, is it ok?" */
const TURNED_ABOUT_IT = new RegExp(
  `^(?:is|are|was|were|has|have|does) (?:it|they|that|those|she|he)\\b|^(?:did|do) (?:it|they|that|those) (?:still |ever |all )?${HOLDS}\\b`,
);

/** A question word with its verb turned round, wherever it stands: "all in all what have I spent". */
const TURNED =
  /\b(?<!(?:thats|is|was|know|see|guess|remember|wonder|me|him|her|them) )(?:what|which|when|where|who|why|how)(?: (?!i\b|we\b|it\b|they\b|he\b|she\b|you\b)\w+){0,3}? (?:did|do|does|have|has|had|is|are|was|were|am|must|should) (?:i|we|it|they|she|he|you)\b(?=.)/;

/** "I wonder whether to bother, but I resealed it anyway" tells in the end. */
const ENDS_TELLING = /\b(?:but|so|and|then) (?:i|we) (?!ever\b|did\b|do\b|have\b)(.+)$/;

const tellsInTheEnd = (words: string): boolean => {
  const end = ENDS_TELLING.exec(words)?.[1];
  return end !== undefined && topicOf(end).actions.length > 0;
};

/** "List of today's work: greased hubs, tightened lugs". */
const enumerates = (sentence: string): boolean => {
  const listed = /:(.+)$/.exec(sentence)?.[1] ?? "";
  return topicOf(listed).actions.length > 0 && !isAllAsking(listed);
};

/** Whether one sentence asks. Time phrases are set aside: "did the bearings last week" tells. */
export const isQuestion = (sentence: string, moment: Moment): boolean => {
  if (TAG.test(sentence.replace(/['’`]/g, ""))) return false;
  const timed = periodIn(sentence, moment);
  const { words, wrapped, marked } = unwrap(timed.rest);
  if (words === "") return wrapped && (marked || timed.period !== null);
  if (!marked && (tellsInTheEnd(words) || enumerates(sentence))) return false;
  if (/^to\b/.test(words) && wrapped) return false;
  if (tells(words) && !wrapped)
    return marked && !/^(?:guess what|how (?:about|bout) that|would you believe)/.test(words);
  const short = words.split(" ").length <= LONG_WORDS;
  return (
    marked ||
    (wrapped && short) ||
    asks(words) ||
    (short && TURNED.test(words)) ||
    DOUBTED.test(words) ||
    asksInNouns(words) ||
    asksInPart(words) ||
    asksInClauses(timed.rest, timed.period !== null) ||
    asksAtTheEnd(sentence, moment) ||
    HOW_IT_IS_BEHIND.test(words)
  );
};
