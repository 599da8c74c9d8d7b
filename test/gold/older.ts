import { readFileSync } from "node:fs";
import { z } from "zod";
import { play } from "./play.ts";
import { isRight } from "./scoring.ts";
import type { Expectation, Turn } from "./talk.ts";

const laterSchema = z.object({
  at: z.string(),
  text: z.string(),
  is: z.enum(["correction", "removal", "note", "question", "other"]),
  of: z.number().optional(),
  fixed: z.record(z.string(), z.unknown()).optional(),
  records: z.number().optional(),
});

/** A message said after all that was told, with the number of the note that it is about, from 0. */
export type Later = z.infer<typeof laterSchema>;

const blockSchema = z.object({
  id: z.string(),
  zone: z.string(),
  hemisphere: z.enum(["north", "south"]),
  told: z.array(z.object({ at: z.string(), text: z.string() })),
  later: z.array(laterSchema),
});

/** Notes of one rig, and messages that may each have been said after them. */
export type Block = z.infer<typeof blockSchema>;

export const blocksIn = (path: string): Block[] =>
  readFileSync(path, "utf8")
    .split("\n")
    .filter((line) => line.trim() !== "")
    .map((line) => blockSchema.parse(JSON.parse(line)));

const expected = ({ is, fixed, records }: Later): Expectation => {
  if (is === "correction") return { fixed: fixed ?? {} };
  return is === "removal" ? { removed: true } : { records: records ?? 0 };
};

/** Plays all that was told and one message after it, on a fresh store; whether that did what was meant, and what it did. */
export const playLater = async ({ told, ...rig }: Block, later: Later) => {
  const expect = expected(later);
  const last: Turn = { at: later.at, text: later.text, expect };
  const turns = await play({ ...rig, turns: [...told, last] });
  const said = turns.at(-1);
  if (said === undefined) throw new Error("A block plays at least one turn.");
  const asked = later.is !== "question" || said.answer !== null;
  return { right: isRight(said, expect) && asked, said, before: turns.slice(0, -1) };
};
