import type { KeptRecord } from "../../../shared/history.ts";
import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { sayMoney } from "../../rig/money.ts";
import { thingName } from "../record-line.ts";
import { doneWord } from "../words.ts";
import { periodWords, when } from "./parts.ts";

const DEAREST_SHOWN = 6;

const costLine = (turn: Turn, record: KeptRecord): string =>
  `${sayMoney(record.fields.cost ?? 0, turn.rig.zone)}  ${thingName(record.fields)}, ${doneWord(record.fields.action)} ${when(turn, record)}`;

export const costReply = (turn: Turn, answer: Answer): Reply => {
  const paid = answer.records.filter(({ fields }) => fields.cost !== null);
  if (paid.length === 0) return { text: `No costs are on record${periodWords(answer)}.` };
  const [single] = paid;
  if (answer.query.ask === "cost" && answer.query.of === "dearest" && single !== undefined)
    return { text: `The dearest${periodWords(answer)}:\n${costLine(turn, single)}` };
  const dearest = [...paid]
    .sort((a, b) => (b.fields.cost ?? 0) - (a.fields.cost ?? 0))
    .slice(0, DEAREST_SHOWN);
  const rest = paid.length - dearest.length;
  const tail = rest > 0 ? `\n…and ${rest} smaller ones.` : "";
  const head = `${sayMoney(answer.cost ?? 0, turn.rig.zone)}${periodWords(answer)}, as far as you told me:`;
  return { text: `${head}\n${dearest.map((record) => costLine(turn, record)).join("\n")}${tail}` };
};
