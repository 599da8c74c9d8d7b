import { readFileSync } from "node:fs";
import type { KeptRecord } from "../../shared/history.ts";
import { Conversation, type TurnResult } from "./conversation.ts";
import { isRight, type Talk, type Turn } from "./scoring.ts";

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
  const right = isRight(result, expect);
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
