import { placeOf } from "../../shared/memory/place.ts";
import { OTHERS_DID, SPEAKER_DID, type Topic } from "../../shared/memory/query.ts";
import { plainWords, tellingWords } from "../../shared/memory/words.ts";
import { remembered } from "../../shared/remembered.ts";
import { systemOf } from "../../shared/vocabulary.ts";
import people from "../lexicon/data/people.json" with { type: "json" };
import { isGivenName, SPELLER } from "../lexicon/lexicon.ts";
import { type Deed, deedsIn } from "./deeds.ts";
import filler from "./filler.json" with { type: "json" };
import { mergeNamed, weighMentions } from "./heads.ts";
import { type Mention, mentionsIn, sayingsIn } from "./names.ts";
import { stuffIn } from "./stuff.ts";

const ASKING: ReadonlySet<string> = new Set(filler.asking.flatMap(plainWords));
const NOT_PLACE: readonly string[] = filler.notPlace.map((phrase) => ` ${plainWords(phrase).join(" ")} `);

const withoutIdioms = (words: readonly string[]): string =>
  NOT_PLACE.reduce((text, idiom) => text.replaceAll(idiom, " "), ` ${words.join(" ")} `);

const placesIn = (words: readonly string[]): readonly string[] => [
  ...new Set([...placeOf(withoutIdioms(words)).values()].flatMap((values) => [...values])),
];

/** Words before and behind which a whole system is meant, whatever single things are named as belonging to it. */
const ALL_OF_IT =
  /\b(?:to do with|everything (?:in|on|for|with|about|of|around)|anything|all) (?:the |my |our )?$/;
const FOR_EXAMPLE =
  /^ ?(?:so |that is |i )?(?:you know|like|mean|meaning|such a|say|including|i mean|for example|namely)\b/;
const AND_THE_REST =
  /\b(?:and (?:so on|so forth|all|all that|all the rest|the rest|such|the like|that|whatnot|what not|stuff|thing)|etc|et cetera|stuff|or whatever)$/;

const UP_TO_COMMA = 12;

/** "Everything to do with water, the geyser and the taps", "the running gear, you know, the springs and so on". */
const isWholeWithParts = (
  words: readonly string[],
  mentions: readonly Mention[],
  { from, to, systems }: Mention,
): boolean => {
  const behind = mentions.filter((each) => each.from >= to && each.from < to + UP_TO_COMMA);
  const parts = behind.filter(({ named }) =>
    named.some(({ component }) => systems.includes(systemOf(component))),
  );
  const last = parts.at(-1)?.to;
  if (last === undefined) return false;
  return (
    ALL_OF_IT.test(`${words.slice(0, from).join(" ")} `) ||
    words.slice(from, to).join(" ").startsWith("to do with") ||
    FOR_EXAMPLE.test(words.slice(to, to + 3).join(" ")) ||
    [1, 2, 3, 4].some((more) => AND_THE_REST.test(words.slice(last, last + more).join(" ")))
  );
};

/** Words of a whole system count only where no single thing is surely named, unless as a part of it. */
const systemsIn = (words: readonly string[], mentions: readonly Mention[]) => {
  const whole = mentions.filter((each) => each.systems.length > 0 && isWholeWithParts(words, mentions, each));
  if (whole.length > 0) return [...new Set(whole.flatMap(({ systems }) => systems))];
  const single = mentions.some(
    ({ named, systems }) => systems.length === 0 && named.some(({ sure }) => sure >= 0.8),
  );
  return single ? [] : [...new Set(mentions.flatMap((mention) => mention.systems))];
};

const covered = (spans: readonly { readonly from: number; readonly to: number }[], at: number): boolean =>
  spans.some(({ from, to }) => from <= at && at < to);

const PEOPLE: ReadonlySet<string> = new Set(people.who.map((word) => plainWords(word).join(" ")));
const OWNERS: ReadonlySet<string> = new Set(["the", "a", "my", "our", "that", "by", "mobile"]);

/** "My wife asks", "the dealer says": one who speaks of the work, and need not have done it. */
const SPEAKS =
  /^(?:asks?|asked|asking|wants?|wanted|says?|said|thinks?|thought|reckons?|bets?|swears?|needs?|keeps|would|wonders?|insists?|claims?|is|are|and)$/;

/** "The driver's side", "the kids' beds": a place, and nobody who works. */
const OWNED_PLACES: ReadonlySet<string> = new Set(
  "side end bed bunk room bedroom corner seat window cabin place cave".split(" "),
);

/** "The dealer did", "by my son": a person, and neither the shop that things are bought in nor one to be told. */
const isPerson = (words: readonly string[], word: string, at: number): boolean =>
  PEOPLE.has(word) &&
  !OWNED_PLACES.has(words[at + 1] ?? "") &&
  OWNERS.has(words[at - 1] ?? "") &&
  (!SPEAKS.test(words[at + 1] ?? "") || words[at + 2] === "not") &&
  !/^(?:from|at|in|to|tell|telling|told|ask|asking|show|showing|for|with)$/.test(words[at - 2] ?? "");

/** "By me", "myself": the speaker; "by others": anyone else. */
const SPEAKER = /\b(?:by (?:me|us)|myself|ourselves|(?:me|us) (?:or|alone))\b/;
const OTHERS =
  /\b(?:by (?:others?|other people|anyone else|somebody else|someone else|(?:a )?pros?|professionals?|hired hands?|outsiders?|strangers?)|(?:others?|other people|somebody else|someone else|professionals?) (?:do|did|done|fixed?|made)|(?:paid|pay|gave|give) (?:to )?(?:others?|other people|someone else|somebody else|professionals?|anyone else))\b/;

/** "By us or by anybody": whoever it was. */
const BY_WHOMEVER =
  /\bby (?:me|us|myself|ourselves)(?: themselves)? or (?:by )?(?:anybody|anyone|somebody|someone|others?|whoever|the \w+)\b|\bby (?:anybody|anyone|whoever|whomever)\b/;

/** "What did col ever do", "what was it dad did", "by craig": who is meant, with no article. */
const BY_NAME =
  /\b(?:what|which|anything|everything|all|how much) (?:\w+ )?(?:did|has|have|was it|is it) (?!(?:i|we|he|she|they|you|it|that|this|the|my|our|her|his|anyone|anybody|someone|somebody|all|to|last|ever|one)\b)(\w{3,}) (?:ever |last |actually |all )?(?:do|did|done|fix|fixed|put|mend|mended|repair|repaired|replace|replaced|make|made|charge|charged|work on|worked on)\b|\bby (\w{3,})$/;
/** "How much of that went to the mechanic" */
const PAID_TO = /\b(?:went|go|goes|gone|paid|owed?|given|gave) (?:out )?to (?:the |my |our )?(\w+)\b/;

const namedDoer = (text: string): string | undefined => {
  const [, acted, by] = BY_NAME.exec(text) ?? [];
  const paid = PAID_TO.exec(text)?.[1];
  const name = acted ?? by;
  if (name !== undefined && (PEOPLE.has(name) || isGivenName(name) || !SPELLER.knows(name))) return name;
  return paid !== undefined && (PEOPLE.has(paid) || isGivenName(paid)) ? paid : undefined;
};

const whoIn = (words: readonly string[]): string | null => {
  const text = words.join(" ");
  const person = words.find((word, at) => isPerson(words, word, at)) ?? namedDoer(text);
  if (person !== undefined) return person;
  if (BY_WHOMEVER.test(text)) return null;
  return OTHERS.test(text) ? OTHERS_DID : SPEAKER.test(text) ? SPEAKER_DID : null;
};

const telling = (words: readonly string[]): readonly string[] =>
  tellingWords(words.join(" ")).filter((word) => !ASKING.has(word));

const TAKEN_IN: ReadonlySet<string> = new Set(
  "in on go goes went put get got getting had fit was were".split(" "),
);

/** "When did the new bearings go in": new ones put in take the place of the old. */
const isRenewed = (words: readonly string[]): boolean =>
  words.includes("new") && words.some((word) => TAKEN_IN.has(word));

/** Named as surely as this, a thing is no stuff: the shackles of the springs, the hot water tank. */
const ITSELF = 0.9;

/** "The smoke alarm ... its battery": what a thing named before has of its own stands for that thing. */
const withoutOwned = (words: readonly string[], mentions: readonly Mention[]): readonly Mention[] =>
  mentions.map((mention, at) => {
    const owner = mentions.slice(0, at).some(({ named }) => named.some(({ sure }) => sure >= ITSELF));
    return words[mention.from - 1] === "its" && owner ? { ...mention, named: [], systems: [] } : mention;
  });

const TROUBLE = /^(?:leak|drip|weep|crack|rattle|squeak|smell|flood|jam|blow|break)$/;
const BEFORE_VERB = /^(?:to|it|they|did|doe|didnt|doesnt|wont|kept|keep|started|start|still|ever|again)$/;
/** "Since it started to leak": what it did, and no name of anything. */
const isVerb = (words: readonly string[], { from, to }: Mention): boolean =>
  to - from === 1 && TROUBLE.test(words[from] ?? "") && BEFORE_VERB.test(words[from - 1] ?? "");

/** "Still steady" tells how it is; "the steadies" are legs. */
const NAMES_LEG =
  /^(?:the|a|my|our|that|this|those|these|corner|front|rear|back|left|right|side|nearside|offside|near|off|which|all|both|each|one|two|four|of|on|with|for|winding)$/;
const isHowItIs = (words: readonly string[], { from, to }: Mention): boolean =>
  to - from === 1 && words[from] === "steady" && !NAMES_LEG.test(words[from - 1] ?? "");

const PAYERS: ReadonlySet<string> = new Set("me us you him her them".split(" "));

const SUMS: ReadonlySet<string> = new Set("money cash dough dollar buck pound quid euro rand".split(" "));
/** "All the money I put in the furnace", "how much have we put into it". */
const isPutIn = (words: readonly string[], { from, to }: Deed): boolean =>
  /^put(?:ting)? (?:in|into|on|onto)$/.test(words.slice(from, to).join(" ")) &&
  (words.slice(Math.max(0, from - 5), from).some((word) => SUMS.has(word)) ||
    /\bhow much (?:have|has|did|had) (?:i|we|he|she|they)$/.test(words.slice(0, from).join(" ")));

/** "What did they charge us", "how much is tied up in the battery", "what has hung on longest": no work. */
const isNoWork = (words: readonly string[], deed: Deed): boolean =>
  isPutIn(words, deed) || isCharged(words, deed) || isTakenOut(words, deed) || isHangingOn(words, deed);

const HANGS_ITSELF: ReadonlySet<string> = new Set("have has had it they one which that still goe".split(" "));
/** "Which has hung on longest": how it holds. */
const isHangingOn = (words: readonly string[], { from, to }: Deed): boolean =>
  /^h(?:ang|ung|anging)$/.test(words[from] ?? "") &&
  (words.slice(from, to).join(" ").endsWith(" on") || words[to] === "on") &&
  HANGS_ITSELF.has(words[from - 1] ?? "");

const PURSES: ReadonlySet<string> = new Set(
  "purse pocket wallet bank account budget saving pension kitty jar tin till pot fund".split(" "),
);
/** "What has that seam taken out of my purse" */
const isTakenOut = (words: readonly string[], { from, to }: Deed): boolean =>
  /^(?:take|took|taken|taking)\b/.test(words[from] ?? "") &&
  words.slice(to, to + 4).some((word) => PURSES.has(word));

const isCharged = (words: readonly string[], { from, to }: Deed): boolean =>
  (/^charge[sd]?$/.test(words[from] ?? "") && PAYERS.has(words[to] ?? "")) ||
  (/^(?:tied|wrapped) up$/.test(words.slice(from, to).join(" ")) && words[to] === "in");

/** "My little house on wheels", "the 5th wheel", "all the money that went into my place": the rig. */
const ON_WHEELS =
  /\b(?:(?:into|on|with|of|for) (?:my|our) (?:own )?(?:little )?(?:place|home|pad|outfit)(?= (?:in|since|so|this|last|over|all|altogether|to date|up to)\b|\W*$)|(?:house|home|hotel|palace|castle|mansion|cottage|shed|tin can|box|apartment) on wheels|(?:5th|fifth)[ -]?wheel(?:er)?(?! (?:hitch|plate|pin|head|coupling|jaws?)))\b/gi;

const topicIn = (text: string): Topic => {
  const words = plainWords(text.replace(ON_WHEELS, "trailer"));
  const sayings = sayingsIn(words);
  const deeds = deedsIn(words).filter((deed) => !isNoWork(words, deed) && !covered(sayings, deed.to));
  const mentions = withoutOwned(
    words,
    weighMentions(
      words,
      mentionsIn(words).filter(
        (each) => !covered(deeds, each.from) && !isVerb(words, each) && !isHowItIs(words, each),
      ),
    ),
  );
  const byDeed = deeds.flatMap(({ components }) => components.map((component) => ({ component, sure: 0.9 })));
  const named = mergeNamed([...mentions, { from: 0, to: 0, named: byDeed, systems: [] }]);
  const loose = words.filter((_, at) => !covered([...deeds, ...mentions], at));
  const apart = words.filter((_, at) => !covered(deeds, at));
  const things = mentions.filter(({ named: all }) => all.some(({ sure }) => sure >= ITSELF));
  const beside = words.map((word, at) => (covered([...deeds, ...things], at) ? "," : word));
  return {
    named,
    systems: systemsIn(words, mentions),
    actions:
      deeds.length === 0 && isRenewed(words)
        ? ["replace"]
        : [...new Set(deeds.flatMap(({ actions }) => actions))],
    where: placesIn(words.map((word, at) => (word === "door" && covered(mentions, at) ? "," : word))),
    materials: stuffIn(beside),
    who: whoIn(words),
    verbs: deeds.map(({ from, to }) => words.slice(from, to).join(" ")),
    all: telling(apart),
    words: telling(loose).filter((word) => placeOf(word).size === 0),
  };
};

/** As many texts as are kept with what they are about: on its way to a reply a message is looked at several times. */
const KEPT = 64;

/** What a question or a correction is about. Time phrases are taken out before. */
export const topicOf: (text: string) => Topic = remembered(topicIn, KEPT);
