import { readFileSync } from "node:fs";
import { daySpan } from "../../shared/edtf.ts";
import type { KeptRecord } from "../../shared/history.ts";
import { compareMaterials } from "../../shared/memory/materials.ts";
import type { RecordFields } from "../../shared/record.ts";
import { Conversation, type TurnResult } from "./conversation.ts";

type Expected = Partial<Record<keyof RecordFields, unknown>> & {
  readonly components?: readonly string[];
  readonly count?: number;
  readonly cost?: number;
  readonly verdict?: "yes" | "no";
};
type Turn = {
  readonly at: string;
  readonly text: string;
  readonly expect?: {
    readonly records?: number;
    readonly fixed?: Expected;
    readonly removed?: true;
    readonly answer?: Expected;
  };
};
type Talk = {
  readonly id: string;
  readonly zone: string;
  readonly hemisphere: "north" | "south";
  readonly turns: readonly Turn[];
};

const sameDate = (one: unknown, other: unknown): boolean => {
  if (typeof one !== "string" || typeof other !== "string") return one === other;
  const [a, b] = [daySpan(one, "north"), daySpan(other, "north")];
  return a !== undefined && b !== undefined ? a.from.equals(b.from) && a.to.equals(b.to) : one === other;
};

const sameMaterials = (wanted: readonly string[], got: readonly string[]): boolean =>
  wanted.length === got.length &&
  wanted.every((material) => got.some((other) => compareMaterials([material], [other]) === "same"));

const FIELDS = ["kind", "component", "action", "outcome"] as const;

const meets = (record: KeptRecord | undefined, wanted: Expected): boolean => {
  const fields = record?.fields;
  const plain = FIELDS.every((field) => wanted[field] === undefined || fields?.[field] === wanted[field]);
  const date = wanted.date === undefined || sameDate(wanted.date, fields?.date);
  const stuff =
    wanted.materials === undefined || sameMaterials(wanted.materials as string[], fields?.materials ?? []);
  return plain && date && stuff;
};

const isAnswered = (result: TurnResult, wanted: Expected): boolean => {
  const { answer } = result;
  if (answer === null) return false;
  const things = [...new Set(answer.records.map((record) => record.fields.component))].sort().join();
  return (
    meets(answer.records[0], wanted) &&
    (wanted.count === undefined || answer.count === wanted.count) &&
    (wanted.cost === undefined || answer.cost === wanted.cost) &&
    (wanted.verdict === undefined || answer.verdict === wanted.verdict) &&
    (wanted.components === undefined || [...wanted.components].sort().join() === things)
  );
};

type Tally = { right: number; all: number };
const tallies = new Map<string, Tally>();
const misses: string[] = [];

const count = (kind: string, right: boolean): void => {
  const tally = tallies.get(kind) ?? { right: 0, all: 0 };
  tallies.set(kind, { right: tally.right + (right ? 1 : 0), all: tally.all + 1 });
};

const brief = (record: KeptRecord | undefined): string => {
  if (record === undefined) return "nothing";
  const { kind, component, where, action, materials, date, outcome, cost } = record.fields;
  return [
    `#${record.id}`,
    kind,
    component,
    where,
    action,
    materials.join("+"),
    date,
    outcome,
    cost,
    record.removed ? "REMOVED" : "",
  ].join(" ");
};

const note = (talk: Talk, at: number, turn: Turn, result: TurnResult): void => {
  const { answer, intent } = result;
  const said =
    answer === null
      ? ""
      : ` ${answer.kind} count=${answer.count} cost=${answer.cost} ${answer.verdict} [${answer.records.map(brief).join(" ; ")}] ${JSON.stringify({ ...answer.query })}`;
  misses.push(
    `${talk.id}/${at} ${turn.text}\n    want ${JSON.stringify(turn.expect)}\n    got  ${intent.is}${said} made=${result.made} [${result.records.map(brief).join(" ; ")}] ${result.problem ?? ""}`,
  );
};

const scoreTurn = (talk: Talk, at: number, turn: Turn, result: TurnResult): void => {
  const { expect } = turn;
  if (expect === undefined) return;
  const kind = expect.records !== undefined ? "note" : expect.answer !== undefined ? "answer" : "correction";
  const live = result.records.filter((record) => !record.removed);
  const right =
    expect.records !== undefined
      ? result.made === expect.records && live.length >= expect.records
      : expect.answer !== undefined
        ? isAnswered(result, expect.answer)
        : expect.removed === true
          ? result.records.some((record) => record.removed)
          : live.some(
              (record) =>
                meets(record, expect.fixed ?? {}) &&
                (expect.fixed?.cost === undefined || record.fields.cost === expect.fixed.cost),
            );
  count(kind, right);
  count("asks or tells", (result.intent.is === "ask") === (expect.answer !== undefined));
  if (expect.records !== undefined) count("no record too many", result.made <= expect.records);
  if (!right) note(talk, at, turn, result);
};

const play = (talk: Talk): void => {
  const conversation = new Conversation(talk.zone, talk.hemisphere);
  talk.turns.forEach((turn, at) => {
    const result = conversation.turn(turn.at, turn.text);
    scoreTurn(talk, at, turn, result);
    if (verbose)
      console.log(
        `${talk.id}/${at} ${turn.text}\n      ${result.intent.is} made=${result.made} [${result.records.map(brief).join(" ; ")}]`,
      );
  });
};

const [path = "../shared/gold/conversations.jsonl", ...flags] = process.argv.slice(2);
const verbose = flags.includes("--all");
const figuresOnly = flags.includes("--figures");
const only = flags
  .find((flag) => flag.startsWith("--only="))
  ?.slice(7)
  .split(",");
const talks = readFileSync(path, "utf8")
  .split("\n")
  .filter((line) => line.trim() !== "")
  .map((line) => JSON.parse(line) as Talk);
for (const talk of talks.filter(({ id }) => only === undefined || only.some((start) => id.startsWith(start))))
  play(talk);
if (!figuresOnly) for (const miss of misses) console.log(miss);
for (const [kind, { right, all }] of tallies)
  console.log(`${kind}: ${right}/${all} = ${(right / all).toFixed(3)}`);
