import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { read } from "../../../../nlp/read/index.ts";
import type { Moment } from "../../../../shared/reading.ts";
import type { RecordFields } from "../../../../shared/record.ts";
import { type Afterwards, afterwardsIn, hemisphereOf, zoneOf } from "../../../gold/corrections.ts";
import { type Expected, type Talk, talksIn } from "../../../gold/talk.ts";

export type MessageClass = "question" | "correction" | "removal" | "";

/** A message of which it is known what it is, and what was told before it. */
export type KnownMessage = {
  readonly text: string;
  readonly moment: Moment;
  readonly before: { readonly fields: RecordFields; readonly minutes: number } | null;
  readonly is: MessageClass;
  /** What the record says once it is put right. */
  readonly fixed?: Expected & { readonly done_by?: string };
};

const GOLD = fileURLToPath(new URL("../../../gold/", import.meta.url));

const firstIn = (text: string, moment: Moment): RecordFields | undefined => read(text, moment).records[0]?.fields;

const momentAt = (at: string): Moment => ({ said: at, zone: zoneOf(at), hemisphere: hemisphereOf(at) });

const fromLine = (line: Afterwards): KnownMessage => {
  const moment = momentAt(line.at);
  const fields = firstIn(line.before, moment);
  return {
    text: line.text,
    moment,
    before: fields === undefined ? null : { fields, minutes: 1 },
    is: line.is === "correction" || line.is === "removal" ? line.is : "",
    ...(line.fixed === undefined ? {} : { fixed: line.fixed as Expected }),
  };
};

const fromTalk = ({ zone, hemisphere, turns }: Talk): KnownMessage[] => {
  const known: KnownMessage[] = [];
  let last: { readonly fields: RecordFields; readonly at: number } | null = null;
  for (const { at, text, expect } of turns) {
    const moment = { said: at, zone, hemisphere };
    const minutes = last === null ? 0 : (Date.parse(at) - last.at) / 60_000;
    const before = last === null ? null : { fields: last.fields, minutes };
    const is: MessageClass =
      expect?.answer !== undefined
        ? "question"
        : expect?.fixed !== undefined
          ? "correction"
          : expect?.removed === true
            ? "removal"
            : "";
    known.push({ text, moment, before, is, ...(expect?.fixed === undefined ? {} : { fixed: expect.fixed }) });
    const fields = is === "" ? firstIn(text, moment) : undefined;
    if (fields !== undefined) last = { fields, at: Date.parse(at) };
  }
  return known;
};

const MOMENT: Moment = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
/** How long ago something else was told, in turn: nothing, just now, a day, long. */
const AGES = [null, 2, 1500, 30_000];

const linesOf = (path: string): { readonly text: string }[] =>
  existsSync(path)
    ? readFileSync(path, "utf8")
        .split("\n")
        .filter((line) => line.trim() !== "")
        .map((line) => JSON.parse(line) as { text: string })
    : [];

/** Messages by themselves, each as if something else had been told a while before. */
const byThemselves = (texts: readonly string[], is: MessageClass, others: readonly RecordFields[]): KnownMessage[] =>
  texts.map((text, at) => {
    const minutes = AGES[at % AGES.length] ?? null;
    const fields = others[(at * 7) % others.length];
    return {
      text,
      moment: MOMENT,
      before: minutes === null || fields === undefined ? null : { fields, minutes },
      is,
    };
  });

const LONGEST = 400;

/** Every message of `test/gold` of which it is known what it is, by the file that it stands in. */
export const knownMessages = (folder = GOLD): ReadonlyMap<string, readonly KnownMessage[]> => {
  const files = readdirSync(folder).sort();
  const known = new Map<string, readonly KnownMessage[]>();
  const of = (stem: string) => files.filter((name) => name.startsWith(stem) && name.endsWith(".jsonl"));
  for (const name of of("corrections-")) known.set(name, afterwardsIn(join(folder, name)).map(fromLine));
  const others = [...known.values()].flat().flatMap(({ before }) => before?.fields ?? []);
  for (const name of of("conversations-")) known.set(name, talksIn(join(folder, name)).flatMap(fromTalk));
  for (const name of of("questions-"))
    known.set(name, byThemselves(linesOf(join(folder, name)).map(({ text }) => text), "question", others));
  for (const name of of("notes-"))
    known.set(
      name,
      byThemselves(
        linesOf(join(folder, name))
          .map(({ text }) => text)
          .filter((text) => text.length <= LONGEST),
        "",
        others,
      ),
    );
  return known;
};
