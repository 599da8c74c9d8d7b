import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterwardsIn } from "../../../gold/corrections.ts";
import { blocksIn } from "../../../gold/older.ts";
import { talksIn } from "../../../gold/talk.ts";
import { KEPT_OUT, knownNotes } from "../../read/training/notes.ts";
import type { Line } from "./asked-for.ts";
import { byThemselves, saidAfter, toldBefore } from "./by-themselves.ts";
import { fromBlock, fromTalk, type ToldAlone, toldAs } from "./in-logs.ts";
import type { KnownMessage } from "./known.ts";

const GOLD = fileURLToPath(new URL("../../../gold/", import.meta.url));
const ASKED = fileURLToPath(new URL("../../ask/questions.txt", import.meta.url));
const TOLD = fileURLToPath(new URL("../notes.txt", import.meta.url));

const filled = (path: string): string[] =>
  readFileSync(path, "utf8")
    .split("\n")
    .filter((line) => line.trim() !== "");

const linesOf = (path: string): Line[] =>
  existsSync(path) ? filled(path).map((line) => JSON.parse(line) as Line) : [];

const textLines = (path: string): string[] => filled(path).filter((line) => !line.startsWith("#"));

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

/** What is known of each note that is a verdict or work, and nothing else. */
const toldAlone = (): ToldAlone =>
  new Map(
    knownNotes()
      .filter(({ set }) => !KEPT_OUT.has(set))
      .flatMap(({ said, text, records: [record, ...others], usage }) =>
        (record?.kind === "check" || record?.kind === "repair") && others.length + usage.length === 0
          ? [[toldAs(said, text), record] as const]
          : [],
      ),
  );

const each = async <T>(
  all: readonly T[],
  from: (one: T) => Promise<readonly KnownMessage[]>,
): Promise<readonly KnownMessage[]> => {
  const known: KnownMessage[] = [];
  for (const one of all) known.push(...(await from(one)));
  return known;
};

/** Every message of `test/gold` of which it is known what it is, by the file that it stands in; but for those kept out. */
export const knownMessages = async (
  keptOut: ReadonlySet<string>,
): Promise<ReadonlyMap<string, readonly KnownMessage[]>> => {
  const files = readdirSync(GOLD)
    .filter((name) => name.endsWith(".jsonl"))
    .sort();
  const of = (stem: string) => files.filter((name) => name.startsWith(stem));
  const after = new Map(of("corrections-").map((name) => [name, afterwardsIn(join(GOLD, name))] as const));
  const others = [...after.values()].flat().flatMap((line) => toldBefore(line) ?? []);
  const known = new Map<string, readonly KnownMessage[]>();
  const add = (name: string, messages: () => readonly KnownMessage[]): void => {
    if (!keptOut.has(name)) known.set(name, messages());
  };
  const notes = (lines: readonly Line[]) => byThemselves(lines, "", others);
  for (const [name, lines] of after)
    add(name, () => [
      ...lines.map((line, at) => saidAfter(line, others, at)),
      ...notes(lines.map(({ before }) => ({ text: before }))),
    ]);
  const alone = toldAlone();
  for (const name of of("conversations-"))
    if (!keptOut.has(name))
      known.set(name, await each(talksIn(join(GOLD, name)), (talk) => fromTalk(talk, alone)));
  for (const name of of("older-"))
    if (!keptOut.has(name)) known.set(name, await each(blocksIn(join(GOLD, name)), fromBlock));
  for (const name of of("questions-"))
    add(name, () => byThemselves(linesOf(join(GOLD, name)), "question", others));
  add("questions.txt", () => byThemselves(textLines(ASKED).map(askedLine), "question", others));
  add("notes.txt", () => notes(textLines(TOLD).map((text) => ({ text }))));
  for (const name of ["short.jsonl", ...of("statements-")]) add(name, () => notes(linesOf(join(GOLD, name))));
  for (const name of of("chat-")) {
    const chat = linesOf(join(GOLD, name));
    add(name, () => [...notes(chat), ...byThemselves(chat, "", [])]);
  }
  for (const name of of("notes-"))
    add(name, () => notes(linesOf(join(GOLD, name)).filter(({ text }) => text.length <= LONGEST)));
  return known;
};
