import type { RecordFields } from "../../shared/record.ts";
import type { Token } from "../lexicon/tokens.ts";
import type { Offer } from "./offer.ts";
import { deniedBy, saysSame } from "./offer-signs.ts";

/** "62, not 52": whether the sum on record is named as the wrong one, beside another. */
export const deniesSumOf = (
  tokens: readonly Token[],
  offers: readonly Offer[],
  fields: RecordFields,
): boolean => {
  const sums = offers.filter(({ field, reckoned }) => field === "cost" && reckoned !== true);
  const isDenied = ({ from }: Offer): boolean => deniedBy(tokens, from) !== undefined;
  return (
    sums.some((sum) => saysSame(sum, fields) && isDenied(sum)) &&
    sums.some((sum) => !saysSame(sum, fields) && !isDenied(sum))
  );
};
