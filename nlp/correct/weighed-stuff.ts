import type { Change } from "../../shared/memory/correction.ts";
import { compareMaterials, isSameHead, isSuchStuff } from "../../shared/memory/materials.ts";
import { isContainer } from "./containers.ts";
import { deniedBy, type OfferScene, saysSame } from "./offer-signs.ts";
import { DENIES, type Rated } from "./rated.ts";
import stuffWords from "./stuff-words.json" with { type: "json" };

/** Named as well where all that went in is denied: "marine grease, not lithium". */
const putInstead = (drop: readonly string[], { offers, fields }: OfferScene): string[] => {
  const left = fields.materials.filter((each) => compareMaterials([each], drop) !== "same");
  if (left.length > 0) return [];
  const named = offers.filter(
    ({ field, is }) => field === "material" && !drop.includes(is) && !fields.materials.includes(is),
  );
  return named.slice(-1).map(({ is }) => is);
};

/** "The label says silicone grease, so silicone": said twice, once in short. */
const fullest = (added: readonly Rated[]): readonly Rated[] =>
  added.filter(
    ({ offer: { is } }) =>
      !added.some(({ offer }) => offer.is.length > is.length && isSuchStuff(is, offer.is)),
  );

/** "It was olive oil, the tin had run out": what stuff comes in or from is none beside it. */
const withoutContainers = (added: readonly Rated[]): readonly Rated[] =>
  added.filter(({ offer: { is } }) => !isContainer(is));

const WRITTEN: ReadonlySet<string> = new Set(stuffWords.written);

/** "It is written butyl tape": what the label says, of all that is named. */
const asWritten = (added: readonly Rated[], { tokens }: OfferScene): readonly Rated[] => {
  const written = added.filter(({ offer: { from } }) =>
    tokens.slice(Math.max(0, from - 2), from).some(({ norm }) => WRITTEN.has(norm)),
  );
  return written.length > 0 ? written : added;
};

/** "Asphalt roof cement": words for stuff with nothing between them are one name. */
const joined = (added: readonly Rated[]): readonly string[] => {
  const names: { to: number; is: string }[] = [];
  for (const { offer } of added.toSorted((a, b) => a.offer.from - b.offer.from)) {
    const before = names.at(-1);
    if (before?.to !== offer.from) names.push({ to: offer.to, is: offer.is });
    else names.splice(-1, 1, { to: offer.to, is: `${before.is} ${offer.is}` });
  }
  return [...new Set(names.map(({ is }) => is))];
};

/** "A new motor, not a wire": stuff on record that is told to be the wrong one. */
export const deniedStuff = ({ offers, tokens, fields }: OfferScene): readonly string[] =>
  offers
    .filter(
      (offer) =>
        offer.field === "material" &&
        saysSame(offer, fields) &&
        DENIES.has(deniedBy(tokens, offer.from) ?? "") &&
        !tokens.slice(Math.max(0, offer.from - 2), offer.from).some(({ norm }) => ALSO.has(norm)),
    )
    .map(({ is }) => is);
/** "Not just silicone" */
const ALSO: ReadonlySet<string> = new Set("just only".split(" "));

/** "It was marine ply": of what kind it is, where only what it is was told. */
const tellsKind = ({ offer }: Rated, { tokens, fields }: OfferScene): boolean =>
  offer.is.includes(" ") &&
  fields.materials.some((kept) => !kept.includes(" ") && isSameHead(offer.is, kept)) &&
  !DENIES.has(deniedBy(tokens, offer.from) ?? "");

const GRADES: ReadonlySet<string> = new Set(stuffWords.grades);
const gradeOf = (name: string): string | undefined =>
  [...GRADES].find((grade) => name.startsWith(`${grade} `) && !GRADES.has(name));

/** "The screws were stainless", of brass screws: what only says of what they were made stands for the whole, in place of that. */
const graded = (
  name: string,
  { tokens, fields }: OfferScene,
): { readonly name: string; readonly of?: string } => {
  if (!GRADES.has(name)) return { name };
  const said = new Set(tokens.map(({ stem }) => stem));
  const alike = fields.materials.flatMap((of) => {
    const grade = gradeOf(of);
    return grade === undefined ? [] : [{ name: `${name} ${of.slice(grade.length + 1)}`, of }];
  });
  const named = alike.find(({ of }) => said.has(of.split(" ").at(-1) ?? ""));
  return named ?? (alike.length === 1 ? alike[0] : undefined) ?? { name };
};

/** What stuff a message puts in or takes out, of all that it names. */
export const stuffChanges = (rated: readonly Rated[], scene: OfferScene): Change[] => {
  const mine = rated.filter(({ offer }) => offer.field === "material");
  const isFiner = (each: Rated): boolean => tellsKind(each, scene);
  const named = withoutContainers(
    fullest(
      mine.filter((each) => isFiner(each) || (each.how !== "drop" && !saysSame(each.offer, scene.fields))),
    ),
  );
  const add = asWritten(named, scene);
  const drop = [
    ...new Set([
      ...mine.filter((each) => each.how === "drop" && !isFiner(each)).map(({ offer }) => offer.is),
      ...deniedStuff(scene),
    ]),
  ];
  if (add.length === 0)
    return drop.length === 0
      ? []
      : [{ change: "materials", drop, add: putInstead(drop, scene), how: "instead" }];
  const also = add.some(({ how }) => how === "also");
  const names = joined(add).map((name) => graded(name, scene));
  const gone = [...drop, ...names.flatMap(({ of }) => of ?? [])];
  return [
    {
      change: "materials",
      drop: gone,
      add: names.map(({ name }) => name),
      how: also && gone.length === 0 ? "also" : "instead",
    },
  ];
};
