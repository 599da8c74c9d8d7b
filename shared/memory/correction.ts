import type { RecordId } from "../history.ts";
import type { Edtf, RecordFields, UseUnit } from "../record.ts";
import type { Topic } from "./query.ts";

/** Which record is put right. */
export type Target =
  /** The message replied to, or the last one that made or changed records. */
  | { readonly by: "last" }
  /** By its number in the message shown, from 1. */
  | { readonly by: "number"; readonly numbers: readonly number[] }
  /** By itself, once it was asked which one is meant. */
  | { readonly by: "record"; readonly record: RecordId }
  /** By what it is about: an older one. */
  | { readonly by: "topic"; readonly topic: Topic };

/** A new date: said outright, or counted from the date that the record has. */
export type DateChange =
  | { readonly on: Edtf }
  /** A day of the month that the record's date lies in. */
  | { readonly dayOfMonth: number }
  | { readonly shift: { readonly days: number } | { readonly months: number } }
  /** 21 spring to 24 winter, as in EDTF: the last one that was over before, or the first one after, the record's date. */
  | { readonly season: number; readonly side: "before" | "after" }
  /** ISO weekday 1 to 7: the last one strictly before, or the first one after, the record's date. */
  | { readonly weekday: number; readonly side: "before" | "after" };

export type Change =
  | { readonly change: "fields"; readonly to: Partial<Omit<RecordFields, "date" | "materials">> }
  | { readonly change: "date"; readonly to: DateChange }
  | {
      readonly change: "materials";
      readonly drop: readonly string[];
      readonly add: readonly string[];
      readonly how: "instead" | "also";
    }
  /** Other words for something said ("pinchweld rubber, not bulb rubber"): what is kept shows which field they belong to. */
  | { readonly change: "phrase"; readonly to: string; readonly instead: string }
  /** Null: the speaker. */
  | { readonly change: "done-by"; readonly to: string | null }
  | { readonly change: "remove" }
  /** Folded into an older record by mistake: a thing of its own. */
  | { readonly change: "part" }
  /** The same thing as before: fold it into the older record. */
  | { readonly change: "join" }
  /**
   * A number ("no, 121"), or the unit of one ("km, not miles"): the last amount told, be it use or money; `instead` is
   * the number that it replaces, if said.
   */
  | {
      readonly change: "number";
      readonly to: number | null;
      readonly unit: UseUnit | null;
      readonly instead: number | null;
    };

export type Correction = {
  readonly target: Target;
  /** At least one. */
  readonly changes: readonly Change[];
  /** What it must not be any more, where the words say so ("not the black tank"): helps to find the record. */
  readonly not: Partial<RecordFields>;
};
