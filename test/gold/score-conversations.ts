import { type Played, type PrintedRecord, play } from "./play.ts";
import { isRight, sortOf } from "./scoring.ts";
import { type Talk, talksIn } from "./talk.ts";

type Tally = { right: number; all: number };
const tallies = new Map<string, Tally>();

const count = (kind: string, right: boolean): void => {
  const tally = tallies.get(kind) ?? { right: 0, all: 0 };
  tallies.set(kind, { right: tally.right + (right ? 1 : 0), all: tally.all + 1 });
};

const brief = (record: PrintedRecord): string => {
  const { id, kind, component, where, action, materials, date, outcome, cost, removed } = record;
  const fields = [kind, component, where, action, materials.join("+"), date, outcome, cost];
  const told = fields.filter((field) => field !== null && field !== "");
  return `#${id} ${told.join(" ")}${removed === true ? " REMOVED" : ""}`;
};

const describe = (talk: Talk, at: number, { turn, replies, records, made, answer, answered }: Played) => {
  const said =
    answer === null
      ? ""
      : `\n    answer ${answer.kind} count=${answer.count} cost=${answer.cost} ${answer.verdict} [${answered.map(brief).join("; ")}]`;
  const did = `\n    made ${made} [${records.map(brief).join("; ")}]`;
  const want = turn.expect === undefined ? "" : `\n    want ${JSON.stringify(turn.expect)}`;
  return `${talk.id}/${at} ${turn.at.slice(0, 10)} ${turn.text}${want}${said}${did}\n    > ${replies.join("\n").replaceAll("\n", "\n    > ")}`;
};

const score = (talk: Talk, at: number, played: Played): void => {
  const { expect } = played.turn;
  const right = expect === undefined || isRight(played, expect);
  if (verbose || (!right && !figuresOnly)) console.log(describe(talk, at, played));
  if (expect === undefined) return;
  count(sortOf(expect), right);
  count("told apart", (played.answer !== null) === (expect.answer !== undefined));
  if (expect.records !== undefined) count("no record too many", played.made <= expect.records);
};

const flags = process.argv.slice(2).filter((word) => word.startsWith("--"));
const [path = "../shared/gold/conversations.jsonl"] = process.argv
  .slice(2)
  .filter((word) => !word.startsWith("--"));
const verbose = flags.includes("--all");
const figuresOnly = flags.includes("--figures");
const only = flags
  .find((flag) => flag.startsWith("--only="))
  ?.slice(7)
  .split(",");

const talks = talksIn(path).filter(({ id }) => only === undefined || only.includes(id));
for (const talk of talks) for (const [at, played] of (await play(talk)).entries()) score(talk, at, played);
for (const [kind, { right, all }] of [...tallies].sort())
  console.log(`${kind}: ${right}/${all} = ${(right / all).toFixed(3)}`);
