import type { Amount, Heard, NumberRef } from "./amount.ts";
import data from "./money.json" with { type: "json" };
import { priceOf, thousandsOf, writtenPrice } from "./prices.ts";
import { listed } from "./words.ts";

const CUES = new Set(data.cues);
const BUYING = new Set(data.buying);
const HEDGES = new Set(data.hedges);
const FIGURED = data.figured.map((phrase) => phrase.split(" "));
const SHOPS = data.shops.map((phrase) => phrase.split(" "));
const UNITS = listed("amountsUnits");

const LOOK_BACK = 4;
const BUYING_REACH = 12;
/** "Swapped it for one", "had it for two". */
const LEAST_FOR = 3;

const wordsBefore = ({ tokens }: Heard, at: number, count: number): string[] =>
  tokens.slice(Math.max(0, at - count), at).map((token) => token.norm);

/** Skips "about", "just under" back from a number. */
const unhedged = (heard: Heard, at: number): number => {
  let from = at;
  while (from > 0 && HEDGES.has(heard.tokens[from - 1]?.norm ?? "")) from--;
  return from;
};

const endsWith = (words: readonly string[], phrases: readonly (readonly string[])[]): boolean =>
  phrases.some((phrase) => phrase.every((word, at) => words[words.length - phrase.length + at] === word));

const endsThere = ({ tokens }: Heard, at: number): boolean => {
  const token = tokens[at];
  return token === undefined || token.kind === "mark" || ENDINGS.has(token.norm);
};
const ENDINGS = listed("moneyEndings");

const inShop = (number: NumberRef, { tokens }: Heard): number => {
  const words = tokens.slice(number.to, number.to + 4).map((token) => token.norm);
  return SHOPS.find((phrase) => phrase.every((word, at) => words[at] === word))?.length ?? 0;
};

/** ", 1.2k." on its own. */
const isShort = (number: NumberRef, { tokens, text }: Heard): boolean =>
  /^k(?![\p{L}\d])/iu.test(text.slice(number.span.end)) &&
  tokens[number.from - 1]?.kind === "mark" &&
  (tokens[number.to] === undefined || tokens[number.to]?.kind === "mark");

/** "(528)" in a note that counts its money. */
const inBrackets = (number: NumberRef, { tokens, text }: Heard): boolean =>
  tokens[number.from - 1]?.norm === "(" &&
  tokens[number.to]?.norm === ")" &&
  number.value >= 10 &&
  /[$£€]/u.test(text);

const isPriced = (number: NumberRef, heard: Heard): boolean => {
  const before = wordsBefore(heard, number.from, LOOK_BACK);
  if (before.some((word) => CUES.has(word))) return number.value >= LEAST_FOR || endsThere(heard, number.to);
  const start = unhedged(heard, number.from);
  const lead = wordsBefore(heard, start, BUYING_REACH);
  if (endsWith(wordsBefore(heard, number.from, LOOK_BACK), FIGURED) || endsWith(lead, FIGURED)) return true;
  return (
    lead.at(-1) === "for" &&
    number.value >= LEAST_FOR &&
    lead.some((word) => BUYING.has(word)) &&
    endsThere(heard, number.to)
  );
};

/** "A new converter one eighty nine", "a new tire a hundred and sixty": said right after what was bought. */
const isBought = (number: NumberRef, heard: Heard): boolean => {
  if (number.value < 15 || !Number.isInteger(number.value) || !endsThere(heard, number.to)) return false;
  const spoken = heard.tokens.slice(number.from, number.to).every((token) => token.kind === "word");
  const lead = wordsBefore(heard, number.from, BOUGHT_REACH);
  const last = lead.at(-1) ?? "";
  return spoken && lead.some((word) => NEW.has(word)) && !LEADS.has(last) && number.kind !== "vague";
};
const BOUGHT_REACH = 5;
const NEW = listed("moneyNew");
const LEADS = listed("moneyNotBefore");

/** "cost me a hundred and sixty five", "part was one ninety five", "for forty two all in": money without its unit. */
export const bareMoneyAt = (number: NumberRef, heard: Heard): Amount | undefined => {
  const { tokens, isUse, isTime } = heard;
  if (number.kind === "ordinal" || number.kind === "fraction") return undefined;
  const after = tokens[number.to]?.norm ?? "";
  if (UNITS.has(after) || isUse(after)) return undefined;
  const { by, to } = thousandsOf(number, heard);
  const shop = inShop(number, heard);
  const decimal = writtenPrice(number, heard);
  const shopped =
    shop > 0 &&
    number.value >= 3 &&
    number.kind !== "vague" &&
    (number.kind === "run" || SURE_SHOPS.has(after));
  const bought = isBought(number, heard);
  if (isTime(number) && !(bought && number.kind === "run")) return undefined;
  const said =
    (number.kind !== "vague" && isPriced(number, heard)) ||
    shopped ||
    inBrackets(number, heard) ||
    isShort(number, heard) ||
    (decimal !== undefined && decimal >= 1 && endsThere(heard, number.to) && isAlone(number, heard)) ||
    bought;
  if (!said) return undefined;
  const value = decimal ?? priceOf(number, tokens);
  return { from: number.from, to: to + (after === "all" ? shop : 0), value: value * by, what: "money" };
};

const SURE_SHOPS = new Set(["all", "plus", "apiece", "out", "the", "each"]);
const MEASURED = listed("moneyMeasured");

/** "ok with it. 7.50": no volts, no inches. */
const isAlone = (number: NumberRef, heard: Heard): boolean =>
  !wordsBefore(heard, number.from, LOOK_BACK).some((word) => MEASURED.has(word));
