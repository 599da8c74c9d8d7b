import type { Again } from "../../shared/memory/intent.ts";
import { comparePlaces } from "../../shared/memory/place.ts";
import type { Named, Topic } from "../../shared/memory/query.ts";
import type { Showing, Shown } from "../../shared/memory/scene.ts";
import { isOther } from "../../shared/memory/work-again.ts";
import { placesSaid } from "../ask/places-said.ts";
import { topicOf } from "../ask/topic.ts";
import { plain } from "../correct/pieces.ts";
import { findNumbers } from "../time/index.ts";

/** Words that lead up to the place: "and then i did the", "same on the". */
const LEAD =
  /^(?:(?:and|then|also|plus|so|ok|okay|now|just|oh|next|after that|meanwhile|went and|have|ive|weve|i|we|have also|the same|same|ditto) )*(?:(?:did|done|do|got|redid|repeated|finished) (?:it |that |the same |also )?|(?:again |thing |job |story |deal |treatment |work )*(?:on|for|with|to|at|over on) )?(?:(?:it|that) (?:on|to|at|for) )?(?:the |my |our )?/;
const TAIL =
  /(?: (?:one|too|as well|also|same stuff|same way|same again|with the same|with the same stuff|the same stuff|same treatment|the same way|the same day|the same|same day|same way|same thing|that day|likewise|while i was at it|while there|while i was there|while under there|today|yesterday|just now|this morning|this afternoon|again|after that|next))+$/;

/** What shows that the work is that of before, done once more. */
const SAME =
  /\b(?:too|as well|also|the same|likewise|same|ditto|other|while (?:i|we) (?:was|were)|while there|another|plus|then)\b|^and\b/;

const WORKLESS: ReadonlySet<string> = new Set(["fault", "todo"]);
const MOST_WORDS = 14;

/** "The right side the same day, another two ten": what is said of money after the place. */
const PRICE =
  /(?:[,;.:]| for| at)\s+(?:another |same again |and )*((?:about |around |roughly )?[$£€]?[\w\s,.]*?\d*[\w\s]*?)(?:\s*(?:dollars?|bucks?|pounds?|quid|euros?|rand|pesos?|each|more|on top))*\s*[.!]*\s*$/i;

type Priced = { readonly told: string; readonly cost: number | null };

const pricedIn = (text: string): Priced => {
  const match = PRICE.exec(text);
  const [number, ...others] = match?.[1] === undefined ? [] : findNumbers(match[1]);
  if (match === null || number === undefined || others.length > 0) return { told: text, cost: null };
  return { told: text.slice(0, match.index), cost: number.value };
};

/** Other words than those of place and of a thing make it something else. */
const saysElse = ({ words, materials, actions }: Topic): boolean =>
  words.length + materials.length + actions.length > 0;

const isElsewhere = (where: string, { fields }: Shown): boolean =>
  fields.where !== null &&
  !WORKLESS.has(fields.kind) &&
  (isOther(where) || comparePlaces(where, fields.where) === "different");

/** The work told last: of what stands at another place, or all that is of one thing. */
const repeated = (where: string, records: readonly Shown[]): readonly Shown[] => {
  const elsewhere = records.filter((shown) => isElsewhere(where, shown));
  if (elsewhere.length > 0) return elsewhere;
  const works = records.filter(({ fields }) => !WORKLESS.has(fields.kind));
  const single = new Set(works.map(({ fields }) => fields.component)).size === 1;
  return single && works.every(({ fields }) => fields.where === null) ? works : [];
};

/** "Did the passenger side too": the work of the last note done at another place. */
export const againElsewhere = (text: string, last: Showing): Again | undefined => {
  const { told, cost } = pricedIn(text);
  const words = plain(told);
  const lead = LEAD.exec(words)?.[0] ?? "";
  const tail = TAIL.exec(words)?.[0] ?? "";
  const where = words.slice(lead.length, words.length - tail.length).trim();
  const bare = lead === "" || /^(?:the |my |our )$/.test(lead);
  if (where === "" || words.split(" ").length > MOST_WORDS || (bare && tail === "")) return undefined;
  const topic = topicOf(where);
  if (!SAME.test(words) || saysElse(topic)) return undefined;
  const [best] = topic.named;
  const other = otherThing(best, last.records);
  if (other !== undefined && tail !== "")
    return { records: [other.id], where: placesSaid(where), component: best?.component ?? null, cost };
  if (topic.where.length === 0 && !isOther(where)) return undefined;
  const meant = repeated(where, last.records).filter(
    ({ fields }) => best === undefined || best.sure < 0.6 || best.component === fields.component,
  );
  return meant.length === 0
    ? undefined
    : {
        records: meant.map(({ id }) => id),
        where,
        component: null,
        cost: meant.length === 1 ? cost : null,
      };
};

/** "And the offside window as well": the last work, done to another thing. */
const otherThing = (best: Named | undefined, records: readonly Shown[]): Shown | undefined => {
  if (best === undefined || best.sure < 0.8) return undefined;
  const works = records.filter(({ fields }) => fields.kind === "repair");
  return works.some(({ fields }) => fields.component === best.component) ? undefined : works.at(-1);
};
