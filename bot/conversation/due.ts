import { Temporal } from "temporal-polyfill";
import type { Answer } from "../../shared/memory/answer-data.ts";
import type { Query } from "../../shared/memory/query.ts";
import { sayDay } from "../replies/look-words.ts";
import { numbered } from "../replies/numbered.ts";
import { lineContext, recordLine } from "../replies/record-line.ts";
import { plural } from "../replies/words.ts";
import type { Reply, Turn } from "./turn.ts";

const MONTH_AHEAD = { days: 30 };
const SHOWN = 8;

type DueQuery = Extract<Query, { ask: "due" }>;

/** The looks that fall due in the asked period, or within a month. */
export const dueAnswer = (turn: Turn, query: DueQuery, found: Answer): Answer => {
  const until = query.period?.to ?? turn.today.add(MONTH_AHEAD).toString();
  const wanted = new Set(query.topic.named.map(({ component }) => component));
  const records = turn.store.looks
    .until(until)
    .flatMap(({ recordId }) => turn.store.history.record(recordId) ?? [])
    .filter(({ fields }) => wanted.size === 0 || wanted.has(fields.component));
  return { ...found, records, count: records.length };
};

export const dueReply = (turn: Turn, answer: Answer): Reply => {
  if (answer.records.length === 0) return { text: "No look is due in the next month." };
  const lines = answer.records.slice(0, SHOWN).map((record) => {
    const look = turn.store.looks.of(record.id);
    const day = look === undefined ? turn.today : Temporal.PlainDate.from(look.putOffTo ?? look.due);
    const overdue = Temporal.PlainDate.compare(day, turn.today) <= 0;
    return `${overdue ? "Now" : sayDay(day, turn.today)}: ${recordLine(record, lineContext(turn))}`;
  });
  const more = answer.records.length - lines.length;
  const head = `${plural(answer.records.length, "look")} ahead:`;
  return { text: `${head}\n${numbered(lines)}${more > 0 ? `\n…and ${more} more.` : ""}` };
};
