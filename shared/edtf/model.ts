/** Uncertain (?), approximate (~), or both (%). */
export type Qualifier = "?" | "~" | "%";

/** A number of which digits may be left open with X: "199X" is 1990 to 1999. */
export type Part = {
  readonly text: string;
  readonly low: number;
  readonly high: number;
  readonly qualifier?: Qualifier;
};

/** A date of any precision. `month` may be a season or another part of the year, 21 to 41. */
export type EdtfDate = {
  readonly kind: "date";
  readonly year: Part;
  /** How many leading digits of the year can be relied on: "1950S2". */
  readonly significant?: number;
  readonly month?: Part;
  readonly day?: Part;
  /** Time of day with its shift, as written. */
  readonly time?: string;
};

/** An end of an interval that is not a date. */
export type NoDate = { readonly kind: "open" } | { readonly kind: "unknown" };
export type EdtfEnd = EdtfDate | NoDate;
export type EdtfInterval = { readonly kind: "interval"; readonly start: EdtfEnd; readonly end: EdtfEnd };
export type EdtfRange = { readonly kind: "range"; readonly start: EdtfEnd; readonly end: EdtfEnd };

/** One of several dates, or all of them. */
export type EdtfSet = {
  readonly kind: "set";
  readonly all: boolean;
  readonly members: readonly (EdtfDate | EdtfRange)[];
};
export type EdtfValue = EdtfDate | EdtfInterval | EdtfSet;

/** What a string says, or why it says nothing. */
export type ParsedEdtf =
  | { readonly ok: true; readonly value: EdtfValue }
  | {
      readonly ok: false;
      readonly reason: "not EDTF" | "no such day" | "no such part of a year";
      readonly text: string;
    };
