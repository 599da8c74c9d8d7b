import { z } from "zod";
import type { RecordId } from "../../shared/history.ts";
import type { Correction } from "../../shared/memory/correction.ts";
import type { LinkStep } from "../../shared/memory/link-plan.ts";
import type { Pending, Shown } from "../../shared/memory/scene.ts";
import { COMPONENTS } from "../../shared/vocabulary.ts";
import type { Turn } from "./turn.ts";

/** The figures that a decision between mending and replacing rests on. */
export const NUMBERS = ["mendCost", "replaceCost", "replaceYears", "failureCost"] as const;

const id = z.number().int();

/** The one thing the bot waits to hear about in a chat, as kept between messages. */
const askedSchema = z.discriminatedUnion("is", [
  z.object({ is: z.literal("nudge"), records: z.array(id) }),
  z.object({
    is: z.literal("which-record"),
    /** The record that the note was kept as meanwhile, if any. */
    kept: id.nullable(),
    noteId: id,
    candidates: z.array(id),
    /** What picking each candidate means, in their order. */
    picked: z.custom<readonly LinkStep[]>(Array.isArray),
  }),
  /** Which record a correction is about. */
  z.object({
    is: z.literal("which-to-amend"),
    candidates: z.array(id),
    correction: z.custom<Correction>((value) => typeof value === "object" && value !== null),
  }),
  z.object({ is: z.literal("settle-field"), record: id }),
  /** The temperature where something cures. */
  z.object({ is: z.literal("temperature"), record: id }),
  /** The number that matters most for mending or replacing, with those given so far. */
  z.object({
    is: z.literal("number"),
    component: z.enum(COMPONENTS),
    wanted: z.enum(NUMBERS),
    given: z.partialRecord(z.enum(NUMBERS), z.number()),
  }),
]);
export type Asked = z.infer<typeof askedSchema>;

export const askedIn = (turn: Turn): Asked | null => {
  const kept = turn.store.questions.pending(turn.chat.channel, turn.chat.chatId);
  return askedSchema.safeParse(kept).data ?? null;
};

const shownOf = (turn: Turn, ids: readonly RecordId[]): readonly Shown[] =>
  ids.flatMap((id) => turn.store.history.record(id) ?? []).map(({ id, fields }) => ({ id, fields }));

export const pendingIn = (turn: Turn): Pending | null => {
  const asked = askedIn(turn);
  if (asked === null) return null;
  switch (asked.is) {
    case "nudge":
      return { is: "nudge", records: asked.records };
    case "which-record":
    case "which-to-amend":
      return { is: "which-record", candidates: shownOf(turn, asked.candidates) };
    case "settle-field":
      return { is: "settle-field", record: asked.record, choices: [] };
    case "temperature":
    case "number":
      return null;
  }
};

export const waitFor = (turn: Turn, asked: Asked): void =>
  turn.store.questions.ask(turn.chat.channel, turn.chat.chatId, asked, turn.now.toString());

export const heardBack = (turn: Turn): void =>
  turn.store.questions.answered(turn.chat.channel, turn.chat.chatId);
