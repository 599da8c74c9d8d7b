import { kinOf } from "../../shared/memory/families.ts";
import { compareMaterials } from "../../shared/memory/materials.ts";
import type { Shown } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { type Mention, mentionsIn } from "../ask/names.ts";
import type { Offer, OfferField } from "../correct/offer.ts";
import { saysSame } from "../correct/offer-signs.ts";
import { offersIn } from "../correct/offers.ts";
import { type Stretch, scan } from "../read/scan.ts";

/** Where one of several things told may end and the next begin. */
const SEAM =
  /[.,;:!?\n]+(?=\s|$)|\s(?=(?:but|while|whereas|though|although)\b)|\s(?=and (?:the|my|our|that|those)\b)|\s(?=and [\w']+(?: [\w']+){0,2} (?:who|that) (?:did|done|put|fixed|fitted)\b)/gi;

/** Values that are put right; a thing named again is which record is meant. */
const VALUES: ReadonlySet<OfferField> = new Set(["date", "cost", "material", "who", "where"]);
/** "Right enough" and "of course" are no values. */
const LOOSE: ReadonlySet<string> = new Set(["unknown", "other", "word"]);

const BESIDES: ReadonlySet<string> = new Set("and the my our that those both , &".split(" "));

/** "The pump and the converter went in on Sunday": names that share what follows. */
const sharing = (
  clauses: readonly Stretch[],
  { tokens, components }: ReturnType<typeof scan>,
): readonly Stretch[] => {
  const isName = ({ from, to }: Stretch): boolean =>
    tokens
      .slice(from, to)
      .every(
        ({ norm }, at) =>
          BESIDES.has(norm) || components.some((each) => each.from <= from + at && from + at < each.to),
      );
  const joined: Stretch[] = [];
  for (const clause of clauses.toReversed()) {
    const next = joined.at(-1);
    if (next !== undefined && isName(clause)) joined.splice(-1, 1, { from: clause.from, to: next.to });
    else joined.push(clause);
  }
  return joined.toReversed();
};

const clausesIn = (text: string, moment: Moment): readonly Stretch[] => {
  const found = scan(text, moment);
  const { tokens } = found;
  const seams = [...text.matchAll(SEAM)].map(({ index }) => index);
  const cuts = seams.map((seam) => tokens.findIndex(({ start }) => start >= seam)).filter((at) => at > 0);
  const starts = [0, ...new Set(cuts)];
  return sharing(
    starts.map((from, at) => ({ from, to: starts[at + 1] ?? tokens.length })),
    found,
  );
};

const overlaps = (a: Stretch, b: Stretch): boolean => a.from < b.to && b.from < a.to;

const within = (offer: Stretch, clauses: readonly Stretch[]): boolean =>
  clauses.some(({ from, to }) => from <= offer.from && offer.to <= to);

/** Named itself, or by a word for its kin where no other is: "the alarm". */
export const namedAs = (
  said: string,
  thing: ComponentId | undefined,
  things: readonly ComponentId[],
): boolean => {
  if (thing === undefined || said === thing) return thing !== undefined;
  const kin = things.filter((each) => kinOf(each).some((other) => other === said));
  return !things.some((each) => each === said) && new Set(kin).size === 1 && kin[0] === thing;
};

/** A record, and the values that a message names beside it. */
export type Owned = { readonly shown: Shown; readonly offers: readonly Offer[] };

/** What tells one record from another where no thing is named: "the welding was two ten", "it was lithium grease". */
const pointsTo = (offer: Offer, fields: RecordFields): boolean =>
  offer.field === "material"
    ? !LOOSE.has(offer.sort) && compareMaterials([offer.is], fields.materials) === "same"
    : offer.field === "action" && saysSame(offer, fields);

/** "The heater" may be the one for the water. */
const mayName = ({ named }: Mention, thing: ComponentId | undefined): boolean =>
  named.some(({ component }) => component === thing);

/** The clauses that speak of each record, by its thing or else by what alone was done or went in there. */
const namedIn = (
  clause: Stretch,
  records: readonly Shown[],
  offered: readonly (readonly Offer[])[],
  mentions: readonly Mention[],
): readonly number[] => {
  const things = records.map(({ fields }) => fields.component);
  const inClause = (at: number): readonly Offer[] =>
    (offered[at] ?? []).filter((offer) => within(offer, [clause]));
  const byThing = records.flatMap((_, at) =>
    inClause(at).some(({ field, is }) => field === "component" && namedAs(is, things[at], things))
      ? [at]
      : [],
  );
  if (byThing.length > 0) return byThing;
  const loosely = records.flatMap((_, at) =>
    mentions.some((each) => within(each, [clause]) && mayName(each, things[at])) ? [at] : [],
  );
  if (loosely.length > 0) return loosely;
  return records.flatMap(({ fields }, at) =>
    inClause(at).some((offer) => pointsTo(offer, fields)) ? [at] : [],
  );
};

/** The stretches of the text that speak of each record: from where it is named to where another is. */
const ownersOf = (text: string, moment: Moment, records: readonly Shown[]): readonly Owned[] => {
  const clauses = clausesIn(text, moment);
  const offered = records.map((shown) => offersIn(text, moment, shown.fields));
  const mentions = mentionsIn(scan(text, moment).tokens.map(({ norm }) => norm));
  let owner: number | undefined;
  const owners = clauses.map((clause) => {
    const named = namedIn(clause, records, offered, mentions);
    owner = named.length === 1 ? named[0] : named.length > 1 ? undefined : owner;
    return owner;
  });
  return records.map((shown, at) => {
    const own = clauses.filter((_, clause) => owners[clause] === at);
    return { shown, offers: (offered[at] ?? []).filter((offer) => within(offer, own)) };
  });
};

/** "The dealer did this, but a friend did that": the last one is put right. */
const TURNS = /\bbut\b/i;

/** Whether a value is named that is not the one on record, by whatever reading. */
const differs = ({ shown, offers }: Owned): boolean =>
  offers.some(
    (offer) =>
      VALUES.has(offer.field) &&
      (offer.field === "who" || !LOOSE.has(offer.sort)) &&
      !offers.some((each) => each.field === "component" && each !== offer && overlaps(each, offer)) &&
      !offers.some(
        (each) => each.field === offer.field && each.from === offer.from && saysSame(each, shown.fields),
      ),
  );

/**
 * "The pipes were today, yes, but the alarm went up on Wednesday": of several records told at once and named again, those
 * beside whose names other values stand, with the values that stand there.
 */
export const toldBeside = (text: string, moment: Moment, records: readonly Shown[]): readonly Owned[] => {
  const named = ownersOf(text, moment, records).filter(({ offers }) => offers.length > 0);
  if (named.length < 2) return [];
  const other = named.filter(differs);
  return TURNS.test(text) ? other.slice(-1) : other;
};
