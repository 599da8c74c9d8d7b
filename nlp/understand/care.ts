import { plain } from "../correct/pieces.ts";

/** What is wanted of standing care, the checks that come round. */
export type CareWish =
  | { readonly care: "show" }
  | { readonly care: "all"; readonly on: boolean }
  /** The checks of what is named in words; surely when it says that checks are meant and not the thing itself. */
  | { readonly care: "some"; readonly on: boolean; readonly about: string; readonly surely: boolean };

/** An answer to the offer of standing care. */
export type CareAnswer = "all" | "pick" | "none";

const CARE =
  "(?:(?:the|my|our|your|all|standing|regular|recurring|routine) )*(?:care|care list|standing care|checks? that come round|regular checks?|recurring checks?|routine checks?|list of checks|checks list|care checks?)";
const SHOW = new RegExp(
  `^(?:(?:please|can you|could you|i want to|lets|let me) )*(?:(?:show|see|list|change|edit|open|give|set up|setup|pick|choose)(?: me| us)? )?${CARE}(?: list| settings?)?(?: please)?$`,
);
const WHAT = new RegExp(
  `^what (?:(?:${CARE}|checks) (?:do you (?:know|keep|have|offer)|are (?:on|switched on|there))|are ${CARE})$`,
);

const ON =
  /^(?:(?:please|yes|and|also|can you|could you) )*(?:(?:turn|switch) on (.+)|(?:turn|switch) (.+) on|keep an eye on (.+? (?:checks?|care)|(?:all|all of) (?:it|them|this)|everything)|start (?:asking|reminding|nudging|nagging) (?:me |us )?(?:about|of|for|to (?:check|do|look at)) (.+)|(?:add|i want|we want) (.+? (?:checks?|care|reminders?)))$/;
const OFF =
  /^(?:(?:please|no|and|also|can you|could you) )*(?:(?:turn|switch) off (.+)|(?:turn|switch) (.+) off|stop (?:asking|reminding|nudging|nagging|bugging|bothering) (?:me |us )?(?:about|of|for|to (?:check|do|look at)) (.+)|(?:dont|do not|never) (?:ask|remind|nudge|nag|bug) (?:me |us )?(?:about|of|for|to (?:check|do|look at)) (.+)|no more (.+? (?:checks?|care|reminders?|nudges?|nagging))|(?:i|we) (?:dont|do not) (?:want|need) (.+? (?:checks?|care|reminders?|nudges?))|(?:drop|remove) (.+? (?:checks?|care|reminders?)))$/;
const SWITCHES = /\b(?:turn|switch)\b/;
const CHECKS = /\b(?:checks?|care|reminders?|nudges?)\b/;
const TAIL = /(?: (?:please|any ?more|again|too|as well|now|from now on|then|for me|for us))+$/;
const ALL = /^(?:(?:all|all of) (?:it|them|this)|everything|the lot|all|all checks|all the checks)$/;
const IS_CARE = new RegExp(`^${CARE}$`);

const named = (match: readonly (string | undefined)[]): string | undefined =>
  match
    .slice(1)
    .find((said) => said !== undefined)
    ?.replace(TAIL, "");

const MOST_WORDS = 14;
/** More is said of the thing than its name: a note. */
const TELLS = /\b(?:it|its|is|was|are|were|ran|has|had|looks?|seems?|that|which|because|this)\b/;

/** "Care", "switch the tire checks on", "stop asking about the awning". Whether what is named has checks, others know. */
export const careIn = (text: string): CareWish | undefined => {
  const words = plain(text).replace(TAIL, "");
  if (words.split(" ").length > MOST_WORDS) return undefined;
  if (SHOW.test(words) || WHAT.test(words)) return { care: "show" };
  for (const [on, when] of [
    [false, OFF],
    [true, ON],
  ] as const) {
    const match = when.exec(words);
    const about = match === null ? undefined : named(match);
    if (about === undefined) continue;
    if (IS_CARE.test(about) || ALL.test(about)) return { care: "all", on };
    if (TELLS.test(about)) return undefined;
    return { care: "some", on, about, surely: !SWITCHES.test(words) || CHECKS.test(about) };
  }
  return undefined;
};

const YES =
  /^(?:(?:yes|yeah|yep|yup|sure|ok|okay|please|do|go ahead|do it|all|all of (?:them|it)|them all|the lot|everything|every one|sounds good|good idea|id like that|why not)(?: |$))+(?:please|thanks)?$/;
const PICK =
  /^(?:(?:please|yes|no|ok|okay|let) )*(?:let me (?:pick|choose|see)(?: (?:them|some))?|ill (?:pick|choose)|i (?:want to|will) (?:pick|choose)|me (?:pick|choose)|pick|choose|some(?: of them)?|one by one|row by row|show me(?: (?:them|the list))?|which ones|what are they)(?: please)?$/;
const NO =
  /^(?:no|nope|nah|not now|no thanks|no thank you|none|none of them|maybe later|later|not yet|dont)(?: thanks| please)?$/;

/** A short answer to "shall I keep an eye on them?". */
export const careAnswerIn = (text: string): CareAnswer | undefined => {
  const words = plain(text);
  if (PICK.test(words)) return "pick";
  if (NO.test(words)) return "none";
  return YES.test(words) ? "all" : undefined;
};
