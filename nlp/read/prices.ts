import type { Token } from "../lexicon/tokens.ts";
import type { Heard, NumberRef } from "./amount.ts";

const THOUSAND = 1000;

/** "twelve fifty" as money is 12.5, "four ninety nine" 4.99, "one twenty nine ninety five" 129.95. */
export const priceOf = (
  number: Pick<NumberRef, "from" | "to" | "kind" | "value">,
  tokens: readonly Token[],
): number => {
  const said = tokens.slice(number.from, number.to);
  const isRun = number.kind === "run" && said.every((token) => token.kind === "word");
  const [whole, cents] = [Math.floor(number.value / 100), number.value % 100];
  if (!isRun || number.value >= 100_000) return number.value;
  if (number.value >= 1000) return cents > 0 ? whole + cents / 100 : number.value;
  return number.value >= 300 && cents === 99 ? whole + cents / 100 : number.value;
};

/** "Nine fifty" may be nine and fifty hundredths: a spoken run that ends in a five or a nought. */
export const mayBeInCents = ({ from, to, value, kind }: NumberRef): boolean =>
  kind === "run" && to - from > 1 && value > 100 && value < 10_000 && value % 5 === 0;

/** "27,50" and "189.00": two places after the mark; "1.250" among those who write thousands so. */
export const writtenPrice = (number: NumberRef, { text, region }: Heard): number | undefined => {
  const written = text.slice(number.span.start, number.span.end);
  if (/^\d{1,6}[.,]\d{2}$/u.test(written)) return Number(written.replace(",", "."));
  if (/^\d{1,3}\.\d{3}$/u.test(written) && region === "GB") return Number(written.replace(".", ""));
  return undefined;
};

/** "$1.2k", "two grand". */
export const thousandsOf = (number: NumberRef, { tokens, text }: Heard): { by: number; to: number } => {
  if (/^k\b/iu.test(text.slice(number.span.end))) return { by: THOUSAND, to: number.to };
  const next = tokens[number.to]?.norm;
  return next === "grand" || next === "k" ? { by: THOUSAND, to: number.to + 1 } : { by: 1, to: number.to };
};
