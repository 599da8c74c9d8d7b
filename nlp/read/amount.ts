import type { Span } from "../../shared/reading.ts";
import type { UseUnit } from "../../shared/record.ts";
import type { Token } from "../lexicon/tokens.ts";

/** A count of money or of use among the tokens. */
export type Amount = {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly what: "money" | UseUnit | "reading";
};

export type NumberRef = {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly kind: string;
  readonly low: number;
  readonly high: number;
  readonly span: Span;
};

/** What an amount is read from: `isTime` tells whether a number is part of a time, `region` is where it was said. */
export type Heard = {
  readonly tokens: readonly Token[];
  readonly text: string;
  readonly region: string;
  readonly isTime: (number: NumberRef) => boolean;
  readonly isUse: (word: string) => boolean;
};
