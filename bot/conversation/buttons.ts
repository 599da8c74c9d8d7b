import { InlineKeyboard } from "grammy";
import { z } from "zod";

export const LOOK_ANSWERS = ["holding", "partly", "failed", "later"] as const;
export type LookAnswer = (typeof LOOK_ANSWERS)[number];

/** What a tap means. */
export type Tap =
  | { readonly tap: "look"; readonly record: number; readonly answer: LookAnswer }
  | { readonly tap: "looks"; readonly answer: "holding" | "later" }
  | { readonly tap: "undo"; readonly turn: number }
  | { readonly tap: "right"; readonly record: number }
  | { readonly tap: "wrong"; readonly record: number }
  /** Which record was meant, of those asked about. */
  | { readonly tap: "pick"; readonly record: number }
  | { readonly tap: "none" }
  | { readonly tap: "settle"; readonly record: number }
  | { readonly tap: "tick"; readonly line: string }
  | { readonly tap: "care"; readonly row: string; readonly on: boolean }
  /** A row of care was seen to, or is put off. */
  | { readonly tap: "seen"; readonly row: string; readonly answer: "done" | "later" }
  | { readonly tap: "words"; readonly note: number };

export type Button = { readonly label: string; readonly tap: Tap };

const id = z.coerce.number().int().nonnegative();
const key = z.string().regex(/^[\w.:-]{1,50}$/);
const answer = z.enum(LOOK_ANSWERS);

const SHAPES = {
  look: z.tuple([id, answer]).transform(([record, given]): Tap => ({ tap: "look", record, answer: given })),
  looks: z
    .tuple([z.enum(["holding", "later"])])
    .transform(([given]): Tap => ({ tap: "looks", answer: given })),
  undo: z.tuple([id]).transform(([turn]): Tap => ({ tap: "undo", turn })),
  right: z.tuple([id]).transform(([record]): Tap => ({ tap: "right", record })),
  wrong: z.tuple([id]).transform(([record]): Tap => ({ tap: "wrong", record })),
  pick: z.tuple([id]).transform(([record]): Tap => ({ tap: "pick", record })),
  none: z.tuple([]).transform((): Tap => ({ tap: "none" })),
  settle: z.tuple([id]).transform(([record]): Tap => ({ tap: "settle", record })),
  tick: z.tuple([key]).transform(([line]): Tap => ({ tap: "tick", line })),
  care: z
    .tuple([key, z.enum(["on", "off"])])
    .transform(([row, to]): Tap => ({ tap: "care", row, on: to === "on" })),
  seen: z
    .tuple([key, z.enum(["done", "later"])])
    .transform(([row, given]): Tap => ({ tap: "seen", row, answer: given })),
  words: z.tuple([id]).transform(([note]): Tap => ({ tap: "words", note })),
} satisfies Record<Tap["tap"], unknown>;

const argumentsOf = (tap: Tap): readonly (string | number)[] => {
  switch (tap.tap) {
    case "look":
      return [tap.record, tap.answer];
    case "looks":
      return [tap.answer];
    case "undo":
      return [tap.turn];
    case "right":
    case "wrong":
    case "pick":
    case "settle":
      return [tap.record];
    case "none":
      return [];
    case "tick":
      return [tap.line];
    case "care":
      return [tap.row, tap.on ? "on" : "off"];
    case "seen":
      return [tap.row, tap.answer];
    case "words":
      return [tap.note];
  }
};

/** The tap as the at most 64 bytes that a button may carry. */
export const tapData = (tap: Tap): string => [tap.tap, ...argumentsOf(tap)].join("/");

/** Undefined for data that no button of ours carries. */
export const parseTap = (data: string): Tap | undefined => {
  const [name, ...rest] = data.split("/");
  const shape = name !== undefined && Object.hasOwn(SHAPES, name) ? SHAPES[name as Tap["tap"]] : undefined;
  const parsed = shape?.safeParse(rest);
  return parsed?.success === true ? parsed.data : undefined;
};

export const keyboard = (rows: readonly (readonly Button[])[]): InlineKeyboard =>
  InlineKeyboard.from(
    rows.map((row) => row.map(({ label, tap }) => InlineKeyboard.text(label, tapData(tap)))),
  );
