import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { ASKS, type AskedFor } from "../../../../nlp/judges/talk.ts";
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
  /** What it asks for, where that is known. */
  readonly asks?: AskedFor;
  /** Whether it asks about the whole rig, where that is known. */
  readonly ofAll?: boolean;
  /** What the record says once it is put right. */
  readonly fixed?: Expected & { readonly done_by?: string };
};

const GOLD = fileURLToPath(new URL("../../../gold/", import.meta.url));

const firstIn = (text: string, moment: Moment): RecordFields | undefined =>
  read(text, moment).records[0]?.fields;

const momentAt = (at: string): Moment => ({ said: at, zone: zoneOf(at), hemisphere: hemisphereOf(at) });

const fromLine = (line: Afterwards): KnownMessage => {
  const moment = momentAt(line.at);
  const fields = firstIn(line.before, moment);
  return {
    text: line.text,
    moment,
    before: fields === undefined ? null : { fields, minutes: 1 },
    is: line.is === "correction" || line.is === "removal" ? line.is : "",
    ...(line.fixed === undefined ? {} : { fixed: line.fixed }),
  };
};

/** What of the kind is asked for, as far as the answer shows it. */
const ofTurn = (ask: string, answer: Expected | undefined): Partial<Line> => {
  if (ask === "cost") return { of: answer?.cost === undefined ? "dearest" : "all" };
  return {};
};

const fromTalk = ({ zone, hemisphere, turns }: Talk): KnownMessage[] => {
  const known: KnownMessage[] = [];
  let last: { readonly fields: RecordFields; readonly at: number } | null = null;
  for (const { at, text, expect, ask } of turns) {
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
    const asks = ask === undefined ? undefined : asksOf({ text, ask, ...ofTurn(ask, expect?.answer) });
    known.push({
      text,
      moment,
      before,
      is,
      ...(asks === undefined ? {} : { asks }),
      ...(expect?.fixed === undefined ? {} : { fixed: expect.fixed }),
    });
    const fields = is === "" ? firstIn(text, moment) : undefined;
    if (fields !== undefined) last = { fields, at: Date.parse(at) };
  }
  return known;
};

const MOMENT: Moment = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
/** How long ago something else was told, in turn: nothing, just now, a day, long. */
const AGES = [null, 2, 1500, 30_000];

type Line = {
  readonly text: string;
  readonly ask?: string;
  readonly focus?: string;
  readonly of?: string;
  readonly order?: string;
  readonly component?: string;
  readonly action?: string;
  readonly where?: string;
};

/** What a line says that its question asks for, as one of the names that the judges use. */
const asksOf = ({ ask, focus, of, order }: Line): AskedFor | undefined => {
  const said =
    ask === "longest"
      ? order === "shortest"
        ? "longest shortest"
        : "longest"
      : [ask, focus ?? of].join(" ").trim();
  return ASKS.find((each) => each === said);
};

const namesNothing = ({ component, action, where }: Line): boolean =>
  component === undefined && action === undefined && where === undefined;

const linesOf = (path: string): Line[] =>
  existsSync(path)
    ? readFileSync(path, "utf8")
        .split("\n")
        .filter((line) => line.trim() !== "")
        .map((line) => JSON.parse(line) as Line)
    : [];

/** Messages by themselves, each as if something else had been told a while before. */
const byThemselves = (
  lines: readonly Line[],
  is: MessageClass,
  others: readonly RecordFields[],
): KnownMessage[] =>
  lines.map((line, at) => {
    const { text } = line;
    const asks = asksOf(line);
    const minutes = AGES[at % AGES.length] ?? null;
    const fields = others[(at * 7) % others.length];
    return {
      text,
      moment: MOMENT,
      before: minutes === null || fields === undefined ? null : { fields, minutes },
      is,
      ...(asks === undefined ? {} : { asks, ofAll: namesNothing(line) }),
    };
  });

const ASKED = fileURLToPath(new URL("../../ask/questions.txt", import.meta.url));
const TOLD = fileURLToPath(new URL("../notes.txt", import.meta.url));

const textLines = (path: string): string[] =>
  readFileSync(path, "utf8")
    .split("\n")
    .filter((line) => line.trim() !== "" && !line.startsWith("#"));

/** "cost brake | what did I pay for the brakes" */
const askedLine = (line: string): Line => {
  const [wanted = "", text = ""] = line.split(" | ");
  const [kinds = "", component] = wanted.split(" ");
  const [ask = ""] = kinds.split("/");
  return {
    text,
    ask,
    ...(component === undefined ? {} : { component }),
    ...(ask === "cost" ? { of: "all" } : {}),
  };
};

const LONGEST = 400;

/** Every message of `test/gold` of which it is known what it is, by the file that it stands in. */
export const knownMessages = (folder = GOLD): ReadonlyMap<string, readonly KnownMessage[]> => {
  const files = readdirSync(folder).sort();
  const known = new Map<string, readonly KnownMessage[]>();
  const of = (stem: string) => files.filter((name) => name.startsWith(stem) && name.endsWith(".jsonl"));
  const lines = new Map(of("corrections-").map((name) => [name, afterwardsIn(join(folder, name))] as const));
  const others = [...lines.values()].flat().flatMap((line) => fromLine(line).before?.fields ?? []);
  for (const [name, all] of lines)
    known.set(name, [
      ...all.map(fromLine),
      ...byThemselves(
        all.map(({ before }) => ({ text: before })),
        "",
        others,
      ),
    ]);
  known.set("short.jsonl", byThemselves(linesOf(join(folder, "short.jsonl")), "", others));
  for (const name of of("conversations-")) known.set(name, talksIn(join(folder, name)).flatMap(fromTalk));
  for (const name of of("questions-"))
    known.set(name, byThemselves(linesOf(join(folder, name)), "question", others));
  known.set("questions.txt", byThemselves(textLines(ASKED).map(askedLine), "question", others));
  known.set(
    "notes.txt",
    byThemselves(
      textLines(TOLD).map((text) => ({ text })),
      "",
      others,
    ),
  );
  for (const name of of("statements-"))
    known.set(name, byThemselves(linesOf(join(folder, name)), "", others));
  for (const name of of("notes-"))
    known.set(
      name,
      byThemselves(
        linesOf(join(folder, name)).filter(({ text }) => text.length <= LONGEST),
        "",
        others,
      ),
    );
  return known;
};
