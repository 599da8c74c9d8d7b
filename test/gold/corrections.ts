import { readFileSync } from "node:fs";
import { z } from "zod";
import type { Hemisphere } from "../../shared/reading.ts";
import { play } from "./play.ts";
import { isRight } from "./scoring.ts";
import type { Expectation } from "./talk.ts";

const lineSchema = z.object({
  before: z.string(),
  at: z.string(),
  text: z.string(),
  is: z.enum(["correction", "removal", "note", "other"]),
  fixed: z.record(z.string(), z.unknown()).optional(),
  records: z.number().optional(),
});

/** A note and what was said a minute later, with what a careful listener makes of it. */
export type Afterwards = z.infer<typeof lineSchema>;

export const afterwardsIn = (path: string): Afterwards[] =>
  readFileSync(path, "utf8")
    .split("\n")
    .filter((line) => line.trim() !== "")
    .map((line) => lineSchema.parse(JSON.parse(line)));

/** A zone of fixed offset, as the clock of a line has it: "-06:00" is Etc/GMT+6. */
export const zoneOf = (at: string): string => {
  const hours = Number(/([+-]\d{2}):\d{2}$/.exec(at)?.[1] ?? 0);
  return hours === 0 ? "Etc/GMT" : `Etc/GMT${hours < 0 ? "+" : "-"}${String(Math.abs(hours))}`;
};
export const hemisphereOf = (at: string): Hemisphere =>
  /\+(?:08|09|1\d):\d{2}$/.test(at) ? "south" : "north";

const later = (at: string): string => {
  const [, day = "", offset = ""] = /^(.*)([+-]\d{2}:\d{2})$/.exec(at) ?? [];
  const time = new Date(Date.parse(`${day}Z`) + 60_000).toISOString().slice(0, 19);
  return `${time}${offset}`;
};

const expected = ({ is, fixed, records }: Afterwards): Expectation =>
  is === "correction"
    ? { fixed: fixed ?? {} }
    : is === "removal"
      ? { removed: true }
      : { records: records ?? 0 };

/** Plays both messages on a fresh store; whether the second did what was meant, and what it did. */
export const playAfterwards = async (line: Afterwards) => {
  const expect = expected(line);
  const [first, second] = await play({
    id: "line",
    zone: zoneOf(line.at),
    hemisphere: hemisphereOf(line.at),
    turns: [
      { at: line.at, text: line.before },
      { at: later(line.at), text: line.text, expect },
    ],
  });
  if (first === undefined || second === undefined) throw new Error("A line plays two turns.");
  const changed = second.records.length - second.made;
  const right =
    isRight(second, expect) && (line.is === "correction" || line.is === "removal" || changed === 0);
  return { right, first, second };
};
