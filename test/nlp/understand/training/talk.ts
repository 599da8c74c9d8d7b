import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { ASKS, type AskedFor, type MessageKind } from "../../../../nlp/judges/talk.ts";
import { read } from "../../../../nlp/read/index.ts";
import { thingsIn } from "../../../../nlp/understand/older.ts";
import type { Moment } from "../../../../shared/reading.ts";
import type { RecordFields } from "../../../../shared/record.ts";
import { type Afterwards, afterwardsIn, hemisphereOf, zoneOf } from "../../../gold/corrections.ts";
import { type Block, blocksIn } from "../../../gold/older.ts";
import { type Expected, type Talk, talksIn } from "../../../gold/talk.ts";

export type MessageClass = MessageKind | "";

/** A record and the note that told it. */
export type ToldOnce = { readonly fields: RecordFields; readonly words: string };

/** A message of which it is known what it is, and what was told before it. */
export type KnownMessage = {
  readonly text: string;
  readonly moment: Moment;
  /** What was told of last, and how long ago. */
  readonly before: (ToldOnce & { readonly minutes: number }) | null;
  /** What was told of before that, newest first. */
  readonly earlier?: readonly ToldOnce[];
  /** Which of all that is put right or taken away, where that is known. */
  readonly about?: RecordFields;
  readonly is: MessageClass;
  /** What it asks for, where that is known. */
  readonly asks?: AskedFor;
  /** Whether it asks about the whole rig, where that is known. */
  readonly ofAll?: boolean;
  /** The thing that it asks about, where that is known. */
  readonly component?: string;
  /** Whether all that was told before is of the same log, and whether what is asked about was ever done. */
  readonly ofOneLog?: boolean;
  readonly never?: boolean;
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
    before: fields === undefined ? null : { fields, words: line.before, minutes: 1 },
    is: line.is === "correction" || line.is === "removal" ? line.is : "",
    ...(line.fixed === undefined ? {} : { fixed: line.fixed }),
  };
};

/** What of the kind is asked for, as far as the answer shows it. */
const ofTurn = (ask: string, answer: Expected | undefined): Partial<Line> => {
  if (ask === "cost") return { of: answer?.cost === undefined ? "dearest" : "all" };
  return {};
};

/** Of all that was told the one thing that a correction left as it is in component and work. */
const putRightIn = (told: readonly ToldOnce[], fixed: Expected | undefined): RecordFields | undefined => {
  const alike = told.filter(
    ({ fields }) =>
      fixed !== undefined && fields.component === fixed.component && fields.action === fixed.action,
  );
  return alike.length === 1 ? alike[0]?.fields : undefined;
};

const fromBlock = ({ zone, hemisphere, told, later }: Block): KnownMessage[] => {
  const kept = told.map(({ at, text }): ToldOnce | undefined => {
    const fields = firstIn(text, { said: at, zone, hemisphere });
    return fields === undefined ? undefined : { fields, words: text };
  });
  const [last, ...earlier] = kept.flatMap((each) => each ?? []).reverse();
  const since = kept.findLastIndex((each) => each !== undefined);
  return later.map(({ at, text, is, of, fixed, records }): KnownMessage => {
    const about = of === undefined ? undefined : kept[of]?.fields;
    const minutes = (Date.parse(at) - Date.parse(told[since]?.at ?? at)) / 60_000;
    return {
      text,
      moment: { said: at, zone, hemisphere },
      before: last === undefined ? null : { ...last, minutes },
      earlier,
      is: is === "other" ? "" : is !== "note" ? is : records === 0 ? "word" : "",
      ...(about === undefined || is === "question" || (records !== undefined && records > 0)
        ? {}
        : { about }),
      ...(fixed === undefined ? {} : { fixed }),
    };
  });
};

/** A note that tells of work on a thing told of before, and makes no record: how that work does. */
const isWord = (text: string, moment: Moment, told: readonly ToldOnce[]): boolean => {
  const things = new Set(told.map(({ fields }) => fields.component));
  return read(text, moment).records.some(({ fields }) => things.has(fields.component));
};

const fromTalk = ({ zone, hemisphere, turns }: Talk): KnownMessage[] => {
  const known: KnownMessage[] = [];
  let last: (ToldOnce & { readonly at: number }) | null = null;
  const told: ToldOnce[] = [];
  for (const { at, text, expect, ask } of turns) {
    const moment = { said: at, zone, hemisphere };
    const minutes = last === null ? 0 : (Date.parse(at) - last.at) / 60_000;
    const before = last === null ? null : { ...last, minutes };
    const is: MessageClass =
      expect?.answer !== undefined
        ? "question"
        : expect?.fixed !== undefined
          ? "correction"
          : expect?.removed === true
            ? "removal"
            : expect?.records === 0 && isWord(text, moment, told)
              ? "word"
              : "";
    const asks = ask === undefined ? undefined : asksOf({ text, ask, ...ofTurn(ask, expect?.answer) });
    const about = is === "correction" ? putRightIn(told, expect?.fixed) : undefined;
    known.push({
      text,
      moment,
      before,
      earlier: told.filter((each) => each.fields !== last?.fields).reverse(),
      ofOneLog: true,
      never: expect?.answer?.verdict === "no" && expect.answer.component === undefined,
      is,
      ...(about === undefined ? {} : { about }),
      ...(asks === undefined ? {} : { asks }),
      ...(typeof expect?.answer?.component === "string" ? { component: expect.answer.component } : {}),
      ...(expect?.fixed === undefined ? {} : { fixed: expect.fixed }),
    });
    const all = is === "" ? read(text, moment).records : [];
    for (const { fields } of all) told.push({ fields, words: text });
    const [first] = all;
    if (first !== undefined) last = { fields: first.fields, words: text, at: Date.parse(at) };
  }
  return known;
};

const MOMENT: Moment = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
/** How long ago something else was told, in turn: nothing, just now, a day, long; most often just now. */
const AGES = [2, null, 2, 1500, null, 2, 30_000];

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

/** As many records as are known when a message comes by itself. */
const KNOWN = 9;
const ALIKE = 2;

const someOf = (others: readonly ToldOnce[], from: number): ToldOnce[] =>
  Array.from({ length: KNOWN }, (_, nth) => others[(from * 7 + nth * 31) % others.length]).flatMap(
    (each) => each ?? [],
  );

/** What was said after a note, as on a rig of which more is known. */
const amongOthers = (known: KnownMessage, others: readonly ToldOnce[], from: number): KnownMessage => ({
  ...known,
  earlier: someOf(others, from),
});

/** Records of things that a message names. */
const aboutAlike = (text: string, others: readonly ToldOnce[], from: number): ToldOnce[] => {
  const things = thingsIn(text, MOMENT);
  const alike = others.filter(({ fields }) => things.includes(fields.component));
  return Array.from(
    { length: ALIKE },
    (_, nth) => alike[(from + nth * 5) % Math.max(1, alike.length)],
  ).flatMap((each) => each ?? []);
};

/** Messages by themselves, each as if something had been told a while before: every other time of the same thing. */
const byThemselves = (
  lines: readonly Line[],
  is: MessageClass,
  others: readonly ToldOnce[],
): KnownMessage[] =>
  lines.map((line, at) => {
    const { text } = line;
    const asks = asksOf(line);
    const minutes = AGES[at % AGES.length] ?? null;
    const any = someOf(others, at);
    const alike = aboutAlike(text, others, at);
    const [last, ...earlier] = at % 2 === 0 ? [...alike, ...any] : [...any, ...alike];
    return {
      text,
      moment: MOMENT,
      before: minutes === null || last === undefined ? null : { ...last, minutes },
      earlier: minutes === null ? [] : earlier,
      is,
      ...(asks === undefined ? {} : { asks, ofAll: namesNothing(line) }),
      ...(is !== "question" || line.component === undefined ? {} : { component: line.component }),
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

const LONGEST = 600;

/** Every message of `test/gold` of which it is known what it is, by the file that it stands in. */
export const knownMessages = (folder = GOLD): ReadonlyMap<string, readonly KnownMessage[]> => {
  const files = readdirSync(folder).sort();
  const known = new Map<string, readonly KnownMessage[]>();
  const of = (stem: string) => files.filter((name) => name.startsWith(stem) && name.endsWith(".jsonl"));
  const lines = new Map(of("corrections-").map((name) => [name, afterwardsIn(join(folder, name))] as const));
  const others = [...lines.values()].flat().flatMap((line): ToldOnce[] => {
    const { before } = fromLine(line);
    return before === null ? [] : [before];
  });
  for (const [name, all] of lines)
    known.set(name, [
      ...all.map((line, at) => amongOthers(fromLine(line), others, at)),
      ...byThemselves(
        all.map(({ before }) => ({ text: before })),
        "",
        others,
      ),
    ]);
  known.set("short.jsonl", byThemselves(linesOf(join(folder, "short.jsonl")), "", others));
  for (const name of of("conversations-")) known.set(name, talksIn(join(folder, name)).flatMap(fromTalk));
  for (const name of of("older-")) known.set(name, blocksIn(join(folder, name)).flatMap(fromBlock));
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
  for (const name of of("chat-")) {
    const chat = linesOf(join(folder, name));
    known.set(name, [...byThemselves(chat, "", others), ...byThemselves(chat, "", [])]);
  }
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
