import type { Purpose } from "../../shared/memory/intent.ts";

type Rule = { readonly when: RegExp; readonly is: Purpose };

const show = (what: Extract<Purpose, { is: "show" }>["what"]): Purpose => ({ is: "show", what });
const chat = (tone: Extract<Purpose, { is: "chat" }>["tone"]): Purpose => ({ is: "chat", tone });

/** "Can I have the ...", and not "I have to report that ...". */
const WANT =
  "(?:show|send|give|make|export|print|draw|want|need|get|see|have|save|create|download|do|write)\\b(?: (?!to\\b)\\w+){0,4}";

/** Short messages that are the same in every scene, on plain words. */
const RULES: readonly Rule[] = [
  {
    when: /^(?:please )?(?:redo|redo (?:it|that)|undo (?:the|that) undo|put (?:it|that) back(?: again| after all| in)?(?: (?:it|that) was (?:right|correct|fine|ok|okay|good|mine|ours)(?: after all)?)?|bring (?:it|that) back|restore (?:it|that)|un ?undo|no (?:put|bring) (?:it|that) back)(?: please)?$/,
    is: { is: "redo" },
  },
  {
    when: /^(?:please |no )?(?:undo|undo (?:that|it|this|(?:that|the|my|this)(?: last)? (?:one|change|thing|correction|edit|fix)|last|my last|what you just did)|revert(?: that| it| the last (?:one|change))?|go back one|put (?:it|that) back (?:the way|how|like) (?:it|that) was|change (?:it|that) back|roll (?:it|that) back|take back the last change)(?: please)?$/,
    is: { is: "undo" },
  },
  {
    when: /^(?:help|help me|what can you do|what do you do|how do(?:es)? (?:this|it|you) work|how do i use (?:this|you)|commands?|instructions|menu|start|what can i (?:say|ask|do)|how does this thing work)$/,
    is: { is: "help" },
  },
  {
    when: new RegExp(
      `\\b(?:${WANT} (?:logbook|log book|pdf|report|printout|html)\\b|^(?:the )?(?:logbook|log book|pdf)$)`,
    ),
    is: show("logbook"),
  },
  {
    when: new RegExp(
      `\\b(?:${WANT} (?:csv|spreadsheet|json|as a table|table of (?:records|everything))\\b|^(?:csv|json|spreadsheet|export)$|^export (?:everything|it all|my data|the data|all)\\b)`,
    ),
    is: show("table"),
  },
  {
    when: new RegExp(`\\b(?:${WANT} (?:calendar|ical|ics)\\b|^(?:calendar|ical|ics)$)`),
    is: show("calendar"),
  },
  {
    when: new RegExp(
      `\\b(?:${WANT} (?:picture of (?:the|my) (?:rig|history|log|records|repairs)|timeline|chart|graph|drawing|picture of it all)\\b|^(?:picture|timeline|chart|graph)$)`,
    ),
    is: show("picture"),
  },
  {
    when: /^(?:please )?(?:back ?up(?: (?:everything|my data|the log|the data|now|it all))?|make a back ?up|do a back ?up|save a back ?up)(?: please| now)?$/,
    is: show("backup"),
  },
  {
    when: /^(?:thanks|thank you|thanks a lot|thx|ty|cheers|ta|much appreciated|appreciate it|great thanks|ok thanks|okay thanks|perfect thanks|good job|nice one|good bot|brilliant thanks|lovely thanks|thank you very much|many thanks|thanks mate|thanks buddy)$/,
    is: chat("thanks"),
  },
  {
    when: /^(?:(?:yes|yep|yeah|yup|aye|ok|okay) )?(?:that ?s|thats|that is) (?:right|correct|it|the one|what i (?:did|said|meant|used|told you))(?: (?:that ?s|thats|that is) (?:right|correct|it|what i (?:did|said|meant)))?$/,
    is: chat("ok"),
  },
  {
    when: /^(?:hang on|hold on|wait|one sec|just a sec|brb|back in a (?:sec|bit|minute))(?: (?:a (?:sec|second|minute|mo)|there|mate))?(?: (?:theres|there is|ive got|got))?(?: (?:somebody|someone|somebodys|someones|the (?:dog|kids?|baby|phone|kettle|wife|neighbou?r)s?|my (?:phone|wife|mum|mom|mate)s?)(?: (?:is|are))?(?: (?:at the (?:door|gate)|calling|ringing|on the (?:phone|line)|barking|crying|boiling|here|up|wants (?:out|in|me|up|feeding)))?)?$/,
    is: chat("wait"),
  },
  {
    when: /^(?:hi|hello|hey|hiya|howdy|good (?:morning|evening|afternoon|night)|morning|evening|gday|yo|hi there|hey there|hello there)$/,
    is: chat("greeting"),
  },
  {
    when: /^(?:ok|okay|k|yes|yep|yeah|yup|no|nope|cool|great|perfect|alright|all right|right|got it|fine|sure|nice|good|awesome|lol|haha|hm+|oh|ah|wow|never ?mind|forget it|not now|sorry)$/,
    is: chat("ok"),
  },
];

/** What a message wants that means the same whatever was said before it. */
export const controlIn = (words: string): Purpose | undefined =>
  words.split(" ").length > 14 ? undefined : RULES.find(({ when }) => when.test(words))?.is;
