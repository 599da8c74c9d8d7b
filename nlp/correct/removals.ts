import { topicOf } from "../ask/topic.ts";
import cues from "./cues.json" with { type: "json" };
import { anyOf, plain, says } from "./pieces.ts";
import data from "./removal-words.json" with { type: "json" };
import { isComeBy, isOthers } from "./whose.ts";

const VERB = anyOf(data.verbs);
const IT = "(?:it|that|this|those|them|both|all of (?:that|it|them))";
const ENTRY = anyOf(data.entries);
const LAST = `(?:(?:the|that|my|this|your) (?:(?:very |whole )?(?:last|latest|previous|most recent|wrong|whole) )?${ENTRY}|(?:that|the|my) (?:last|latest|previous)(?: ${ENTRY})?|what i (?:just )?(?:said|told you|wrote|sent))`;
const OFF =
  "(?:(?: (?:back|right|out|off|away|down|again|completely|altogether|entirely))*(?:(?: (?:from|off|out of|of|in))+ (?:the|my|your|our) (?:records?|log|log ?book|books?|list|history|memory|file|notes))?)";
const KINDLY =
  "(?:(?:please|kindly|just|can you|could you|would you|better|you can|you may|you should|go ahead and|so|and|then|i want you to|id like to|ill|lets|let me) )*";
const ENDING = "(?: (?:please|thanks|thank you|will you|would you|then|too|now|mate|ta|cheers))*";

const PLAIN_REMOVAL = new RegExp(`^${KINDLY}${VERB} (?:${IT}(?: ${ENTRY})?|${LAST})${OFF}${ENDING}$`);
const OF_THING = new RegExp(
  `^${KINDLY}(${VERB}) (the |that |my |our )?((?:\\w+ ){0,3}?\\w+?)( (?:one|entry|record|note|job|line|item|log|fix|patch|repair|part|thing|bit|business|story)s?)?(${OFF})${ENDING}$`,
);
/** Verbs that are no work on a trailer: what they take away needs no "entry" behind it. */
const ONLY_RECORDS =
  /^(?:delete|erase|scratch|strike|expunge|void|disregard|withdraw|retract|forget|ignore)$/;
/** "Drop the jack bit by bit" */
const HANGS = / (?:by|with|from|on|in|to|for|at|until|and)$/;
/** "Drop the fan bit" is of a record, "cut the rusty bit out" may be work. */
const VAGUE = /^ (?:part|thing|bit|business|story)s?$/;
const WORKS = /^(?:remove|clear|wipe|pull|cut|rub out|take|throw)/;

/** "Don't put it against mine": what was told belongs elsewhere. */
const KEEPS_APART =
  /\b(?:dont|do not|never|neednt|need not|shouldnt|should not|not to|no need to) (?:(?:go|be|you|have|ever|even|just) )*(?:put|putting|count|counting|log|logging|keep|keeping|record|recording|write|writing|add|adding|enter|entering|store|book|booking|mark|marking|file|filing|list|listing|stand|go|belong)(?: (?:it|that|this|them|those)(?: one| bit| job)?)?(?: down)? (?:against|on|under|to|in|with|for|as|among|beside) (?:mine|ours|(?:my|our) (?:record|log|rig|van|trailer|caravan|camper|one)|this (?:rig|van|trailer|caravan|camper|one))s?(?: (?!yet\b)\w+){0,3}$/;

const GONE = new RegExp(
  `^(?:the |that |my )((?:\\w+ ){0,3}?\\w+?)(?: (?:${ENTRY}))?(?: i (?:told you about|mentioned|logged|sent))? (?:can (?:go|be (?:deleted|removed|dropped|scrapped|binned)|come (?:off|out))|should(?:nt| not) be (?:there|in there|on there|in the log)|should (?:go|come (?:off|out))|needs? to (?:go|come (?:off|out))(?: from the (?:log|record|list))?|never happened|didnt happen|did not happen|doesnt (?:belong|count)(?: (?:there|here|in (?:here|there)))?)$`,
);

/** Why something is taken away again: another's, never done, told to the wrong one. */
const REASON =
  /^not (?:the |my |our )?(?:caravan|trailer|camper|van|rig)s?$|\b(?:boat|car|truck|neighbou?r|mate|friend|brother|house|ute|bakkie|dad|mum|son|next door)s?\b|\b(?:wasnt|isnt|werent|not|never was) (?:ours?|mine|our (?:rig|trailer|van|caravan|camper)|(?:on |for |about |from )?(?:this|our|my) (?:one|rig|trailer|van|caravan|camper)|true|real|the (?:caravan|trailer|camper|van|rig)s)\b|\b(?:i|we) (?:never|didnt|did not|havent) (?:actually |even |really )?(?:did|do|done|got|get|had|have|fixed|patched|sealed|replaced|touched|\w+ed|\w+)\b|\b(?:dreamt|dreamed|imagined|made (?:it|that) up|pocket|butt|meant for|wrong (?:one|rig|trailer|van|caravan|camper|chat|person|thread|window|group|number)|thinking of|mistake|error|accident|test|twice|duplicate|joking|kidding|never happened|didnt happen|somebody elses|someone elses|other (?:rig|trailer|van|caravan|camper|one))\b/;

/** Says by itself that there is nothing to keep. */
const NOT_OURS =
  /^(?:(?:that|this|it)(?: one)?(?:s| is| was)?|thats|its) (?:wasnt|isnt|not|never) (?:ours|mine|(?:on )?(?:our|my|this) (?:rig|trailer|van|caravan|camper))$|^(?:that|it|this)(?: one)? (?:didnt|never) (?:actually |really |even )?happen(?:ed)?$/;

/** "…, that was at the bach. Del": with nothing behind it. */
const BARE = /^(?:please )?(?:del|delete|erase|scrap|scratch|remove|bin)(?: (?:it|that|this))?(?: please)?$/;

const clausesOf = (text: string): readonly string[] =>
  text
    .split(
      /[.;!?,:\n]+\s+|\s+-+\s+|\s+—\s+|\s+(?=(?:i|we|it|that) (?:never|didn'?t|wasn'?t|was|isn'?t)\b)|\s+(?=(?:it|that)'?s (?:my|our|his|her|their|on|from|not|(?:\w+ )?\w+'?s)\b)|\s+(?:so|and)\s+(?=(?:please |just |can you |you can |better )*(?:delete|erase|remove|scratch|strike|scrub|scrap|bin|drop|kill|lose|ditch|cancel|wipe|void|forget|ignore|disregard|expunge|undo|chuck|toss|dump|nix|take|get rid|throw|pull)\b)/i,
    )
    .map(plain)
    .filter((words) => words !== "");

const thingIn = (words: string): string | undefined =>
  (topicOf(words).named[0]?.sure ?? 0) >= 0.55 ? words : undefined;

/** "Toss the second one": of a thing told twice, the one told of last. */
const LATTER = /^(?:second|latter|new|newer|duplicate|extra|double|other)$/;

/** What one clause takes away, `idle` where it is told to have come to nothing: "" for what was last told, else the words for it. */
const takenBy = (words: string, idle: boolean): string | undefined => {
  if (PLAIN_REMOVAL.test(words) || NOT_OURS.test(words)) return "";
  if (KEEPS_APART.test(words)) return "";
  const [, verb = "", owner, thing = "", entry, off = ""] = OF_THING.exec(words) ?? [];
  const isEntry = entry !== undefined && !(VAGUE.test(entry) && WORKS.test(verb));
  const isRecord =
    isEntry || off.trim().includes(" ") || (owner !== undefined && (idle || ONLY_RECORDS.test(verb)));
  if (isRecord && LATTER.test(thing)) return "";
  if (isRecord && thing !== "" && !HANGS.test(thing)) return thingIn(thing);
  const gone = GONE.exec(words)?.[1];
  if (gone === undefined) return undefined;
  return /^(?:last|first|second|third|fourth|fifth)$/.test(gone) ? gone : thingIn(gone);
};

/** It came to nothing: "the compressor gave up before I got that far". */
const NOT_REACHED =
  /\b(?:before|b4|til|till|until) (?:i|we) (?:ever )?(?:got|could|had|managed|made it)\b|\b(?:never|didnt) (?:got|get|make it) (?:to it|that far|round to it|around to it|there)\b|\bran out of (?:time|light|daylight|stuff|it)\b/;

const isReason = (words: string): boolean =>
  words.split(" ").length <= 14 &&
  !isComeBy(words) &&
  (REASON.test(words) || NOT_REACHED.test(words) || says(words, cues.reasons));

const OPENING = new RegExp(`^${anyOf(data.openings)}(?: ${anyOf(data.openings)})*$`);

const HEADS = new RegExp(`^(?:${anyOf([...data.callings, ...data.openings])} )+`);

/** "The bearing wasn't ours": what the reason is about. */
const ABOUT =
  /^(?:the|my|that) ((?:\w+ ){0,2}?\w+?)(?: (?:one|entry|record|note|job|fix|patch|repair))? (?:wasnt|isnt|was|is|never|belongs)\b/;

const aboutIn = (words: string): string | undefined => {
  const thing = ABOUT.exec(words)?.[1];
  return thing === undefined ? undefined : thingIn(thing);
};

/** Work on a named thing: a note of its own, which may not get lost. */
const tellsWork = (words: string): boolean => {
  const { named, actions } = topicOf(words);
  return actions.length > 0 && (named[0]?.sure ?? 0) >= 0.6;
};

const MOST_WORDS = 60;
const MOST_CLAUSES = 4;
/** The same where it is told whose it was. */
const MOST_TOLD = 8;

const TOLD_DONE = /\b(?:never|didnt|did not|havent)\b/;

const removalOf = (thing: string): string =>
  thing === "" || thing === "last" ? "delete that" : `delete the ${thing} one`;

/** A wish to have something taken off the record, in one form; with why, before or after it. Undefined for all else. */
export const removal = (text: string): string | undefined => {
  if (text.split(/\s+/).length > MOST_WORDS) return undefined;
  const clauses = clausesOf(text).filter((words) => !OPENING.test(words));
  if (clauses.length === 0) return undefined;
  const ending = clauses.at(-1) ?? "";
  const about = clauses.slice(0, -1).find((words) => thingIn(words) !== undefined);
  if (BARE.test(ending) && about !== undefined && clauses.length <= MOST_CLAUSES)
    return removalOf(about.replace(/^(?:the|that|my|our) /, ""));
  const idle = clauses.some((words) => NOT_REACHED.test(words));
  const taken = clauses.map((words) => takenBy(words.replace(HEADS, ""), idle));
  const found = taken.filter((thing) => thing !== undefined);
  const others = clauses.filter((_, at) => taken[at] === undefined);
  const ofAnother = others.filter((words) => isOthers(words, found.find((thing) => thing !== "") ?? ""));
  const besides = others.filter((words) => !ofAnother.includes(words));
  const most = ofAnother.length > 0 ? MOST_TOLD : MOST_CLAUSES;
  if (found.length === 0 || clauses.length > most) return undefined;
  if (!besides.every((words) => isReason(words) || (ofAnother.length > 0 && !tellsWork(words))))
    return undefined;
  const named =
    found.find((thing) => thing !== "") ??
    others.map(aboutIn).find((thing) => thing !== undefined) ??
    others.find((words) => TOLD_DONE.test(words) && thingIn(words) !== undefined);
  return removalOf(
    named === undefined
      ? ""
      : named.replace(/^.*\b(?:never|didnt|did not|havent)\b(?: \w+)? (?:the |my |our )?/, ""),
  );
};
