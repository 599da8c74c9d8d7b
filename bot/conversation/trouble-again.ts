import { mentionsIn } from "../../nlp/ask/names.ts";
import { asWordOn } from "../../nlp/understand/word-on.ts";
import { plainWords } from "../../shared/memory/words.ts";
import { tellsReturn, undoes } from "../../shared/memory/work.ts";
import type { Draft, Reading } from "../../shared/reading.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { isKnown } from "./known.ts";
import type { Turn } from "./turn.ts";

/** As many of the latest works may be those after which trouble shows elsewhere. */
const LATEST = 5;

const mayName = (text: string, component: ComponentId): boolean =>
  mentionsIn(plainWords(text)).some(({ named }) => named.some((each) => each.component === component));

/**
 * "The floor's wet again", after the toilet was tightened for the water on the floor: trouble where it shows, of a thing of
 * which nothing else is known, as a word on the one thing whose work named that place and was to cure such trouble.
 */
export const troubleAgain = (
  turn: Turn,
  text: string,
  { records: [mine, ...others] }: Reading,
): Draft | undefined => {
  if (mine?.fields.kind !== "fault" || others.length > 0 || !tellsReturn(text)) return undefined;
  const shows = mine.fields.component;
  if (isKnown(turn, shows)) return undefined;
  const { history } = turn.store;
  const works = history
    .records({ kinds: ["repair"], limit: LATEST })
    .filter(({ noteId }) => mayName(history.note(noteId)?.text ?? "", shows));
  const [meant, ...more] = new Set(works.map(({ fields }) => fields.component));
  const cures = works.some(({ fields }) => undoes(text, fields.action));
  return meant === undefined || more.length > 0 || !cures ? undefined : asWordOn(mine, meant, text);
};
