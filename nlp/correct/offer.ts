import type { Change } from "../../shared/memory/correction.ts";
import type { Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import type { Scan, Stretch } from "../read/scan.ts";

export type OfferField = "component" | "action" | "date" | "cost" | "material" | "where" | "who" | "outcome";

/** A value that a message names and that may take the place of what a record says. */
export type Offer = Stretch & {
  readonly field: OfferField;
  readonly change: Change;
  /** The value as text, to compare: an id, EDTF without "~", a number, the words. */
  readonly is: string;
  /** What sort of value it is within its field. */
  readonly sort: string;
  /** All things that the words of a loose name may stand for, the likeliest first. */
  readonly senses?: readonly ComponentId[];
  /** Taken for what is akin to the thing on record, and not for the likeliest. */
  readonly akin?: true;
  /** Not said, but worked out from what is. */
  readonly reckoned?: true;
};

export const bareDate = (edtf: string | null): string => (edtf ?? "").replace(/~/g, "");

/** What was heard, and its words. */
export type Heard = { readonly found: Scan; readonly words: readonly string[] };
/** The same, held against a record. */
export type Said = Heard & { readonly fields: RecordFields; readonly moment: Moment };

export const overlaps = (a: Stretch, b: Stretch): boolean => a.from < b.to && b.from < a.to;

/** Something that went in, instead of what is on record. */
export const stuff = ({ from, to }: Stretch, name: string, sort: string): Offer => ({
  from,
  to,
  field: "material",
  change: { change: "materials", drop: [], add: [name], how: "instead" },
  is: name,
  sort,
});

/** What a record says in the field of an offer, in the offer's terms; "" for nothing. */
export const keptAs = (field: OfferField, fields: RecordFields): readonly string[] => {
  switch (field) {
    case "component":
      return [fields.component];
    case "action":
      return fields.action === null ? [] : [fields.action];
    case "date":
      return fields.date === null ? [] : [bareDate(fields.date)];
    case "cost":
      return fields.cost === null ? [] : [String(fields.cost)];
    case "material":
      return fields.materials;
    case "where":
      return fields.where === null ? [] : [fields.where];
    case "who":
      return [];
    case "outcome":
      return fields.outcome === null ? [] : [fields.outcome];
  }
};
