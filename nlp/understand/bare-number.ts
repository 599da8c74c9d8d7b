import { findNumbers } from "../time/index.ts";

/** What may stand around a number that answers a question for one. */
const AROUND: ReadonlySet<string> = new Set(
  "about around roughly maybe perhaps like say some nearly almost close near to over under just it its is was be id i guess think reckon a or so out here outside today now right ok well um uh yes yeah no degree degrees deg celsius centigrade fahrenheit c f dollar dollars buck bucks quid pound pounds euro euros usd cad aud mile miles km kms kilometers kilometres percent year years month months week weeks day days hour hours s time times minus plus below above zero in the for of and new unit would will cost costs comes come fitted installed quote quoted them they that thats".split(
    " ",
  ),
);

/** Whether a message is a number and nothing else, as when a number was asked for: "about 60 degrees", not "the second time". */
export const isBareNumber = (text: string): boolean => {
  const numbers = findNumbers(text);
  const counts = numbers.some(({ kind }) => kind !== "ordinal");
  if (!counts || text.includes("?")) return false;
  const rest = [...numbers]
    .reverse()
    .reduce((left, { span }) => `${left.slice(0, span.start)} ${left.slice(span.end)}`, text);
  const words = rest.toLowerCase().match(/\p{L}+/gu) ?? [];
  return words.every((word) => AROUND.has(word));
};
