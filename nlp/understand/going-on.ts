import { plainWords } from "../../shared/memory/words.ts";
import { putsIn } from "../../shared/memory/work.ts";
import type { Draft, Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import { componentName } from "../../shared/vocabulary.ts";
import { deedNamed } from "../ask/deeds.ts";
import { weighMentions } from "../ask/heads.ts";
import { mentionsIn } from "../ask/names.ts";
import { speakingSigns } from "../ask/spoken-of.ts";
import { surelyNamed } from "../ask/surely-named.ts";
import { LEARNT_TALK } from "../judges/talk.ts";
import { wordAt } from "../read/ground.ts";
import { phraseAt } from "../read/phrases.ts";
import { scan } from "../read/scan.ts";
import { DETERMINERS } from "../read/words.ts";
import { oneBehind } from "./behind-lead.ts";
import { tellsItIsIn } from "./got-it.ts";
import neutral from "./neutral-words.json" with { type: "json" };

/** From here on, words speak of a thing without naming it: "what the wheels spin on". */
const SPOKEN_OF = 0.95;

/** Whether only what was done calls a thing to mind: "put", "hung". */
const isOfDeedOnly = ({ fields, evidence }: Draft, text: string): boolean => {
  const spans = evidence.component?.spans ?? [];
  return (
    spans.length > 0 &&
    (LEARNT_TALK.spoken(speakingSigns(text)).get(fields.component) ?? 0) < SPOKEN_OF &&
    spans.every(({ start, end }) =>
      plainWords(text.slice(start, end)).every((word) => deedNamed(word) !== undefined),
    )
  );
};

/** Named by no sure name, and not spoken of for sure: by what is like it, or by what went in. */
const isNamedLoosely = ({ fields: { component } }: Draft, text: string): boolean =>
  !surelyNamed(text).includes(component) &&
  (LEARNT_TALK.spoken(speakingSigns(text)).get(component) ?? 0) < SPOKEN_OF;

/** "New washer instead", of the tap: what seemed to be a thing of its own went in. */
const isStuffOf = ({ evidence }: Draft, draft: Draft, text: string): boolean => {
  const stuff = stuffOf(draft);
  const spans = evidence.component?.spans ?? [];
  return (
    spans.length > 0 &&
    spans.every(({ start, end }) => plainWords(text.slice(start, end)).every((word) => stuff.includes(word)))
  );
};

const stuffOf = ({ fields }: Draft): readonly string[] => plainWords(fields.materials.join(" "));

/** Words of a thing that stand for any: "scraped the lot off". */
const FOR_ANY: ReadonlySet<string> = new Set(neutral.things);

/** "Put a gasket in": what comes behind is where. */
const PLACING: ReadonlySet<string> = new Set(neutral.places);
const OPENS: ReadonlySet<string> = new Set([...DETERMINERS, "new"]);

/** "Got a new doormat", "put the hook back up": what was worked on is named, though it is nothing known. */
const worksOnOther = (draft: Draft, text: string, moment: Moment): boolean => {
  const found = scan(text, moment);
  const stuff = new Set([...stuffOf(draft), ...PLACING]);
  return (draft.evidence.action?.spans ?? []).some(({ start, end }) => {
    const deed = plainWords(text.slice(start, end));
    if (deed.every((word) => stuff.has(word))) return false;
    const first = found.tokens.findIndex((token) => token.start >= start);
    const behind = found.tokens.findIndex((token) => token.start >= end);
    const objects = PLACING.has(deed.at(-1) ?? "") ? [first + 1] : [first + 1, behind];
    return objects.some((at) => {
      const phrase = at <= first ? undefined : phraseAt(found, at, new Set());
      if (phrase === undefined || phrase.pronoun || !OPENS.has(wordAt(found, phrase.from - 1))) return false;
      const head = plainWords(phrase.name).at(-1);
      return head !== undefined && !FOR_ANY.has(head) && !stuff.has(head);
    });
  });
};

/** From here on, a name is that of another thing. */
const NAMED = 0.65;

/** Another thing is named, and not as what went in. */
const namesOther = (draft: Draft, text: string): boolean => {
  const words = plainWords(text);
  return weighMentions(words, mentionsIn(words)).some(
    ({ from, to, named }) =>
      named.some(({ sure }) => sure >= NAMED) &&
      !named.some(({ component }) => component === draft.fields.component) &&
      !words.slice(from, to).some((word) => stuffOf(draft).includes(word)),
  );
};

/** Whether what a text reads as by itself may be work on the thing before just as well. */
const mayGoOn = (mine: Draft, draft: Draft, text: string): boolean =>
  mine.fields.kind === "repair" &&
  (isOfDeedOnly(mine, text) ||
    ((isNamedLoosely(mine, text) || isStuffOf(mine, draft, text)) && !namesOther(draft, text)));

/** Words put before a text that name the thing, and whether the text has to say the work itself. */
type Lead = { readonly words: string; readonly saysWork: boolean };

/** "It is in": of what was to be put in, that is the work. */
const leadsTo = ({ kind, action, component }: RecordFields, text: string): readonly Lead[] => {
  const name = componentName(component);
  const plainly: Lead = { words: `${name}: `, saysWork: true };
  return kind === "todo" && putsIn(action) && tellsItIsIn(text)
    ? [plainly, { words: `fitted the new ${name}. `, saysWork: false }]
    : [plainly];
};

/**
 * Work on a known thing that the text does not name: "stronger one is in since this morning" of the inverter. `drafts` is
 * what the text reads as by itself: nothing, or work on a thing that it names loosely or only by the deed.
 */
export const workGoingOn = (
  text: string,
  meant: RecordFields,
  drafts: readonly Draft[],
  moment: Moment,
): Draft | undefined => {
  const [mine, ...others] = drafts;
  if (others.length > 0 || text.includes("?") || mine?.fields.component === meant.component) return undefined;
  for (const { words, saysWork } of leadsTo(meant, text)) {
    const draft = oneBehind(words, text, meant.component, moment);
    const isSaid = (draft?.evidence.action?.spans.length ?? 0) > 0;
    if (draft?.fields.kind !== "repair" || (saysWork && !isSaid)) continue;
    if (worksOnOther(draft, text, moment)) return undefined;
    if (mine === undefined || mayGoOn(mine, draft, text)) return draft;
  }
  return undefined;
};
