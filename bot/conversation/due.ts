import { Temporal } from "temporal-polyfill";
import type { Answer } from "../../shared/memory/answer-data.ts";
import type { Query } from "../../shared/memory/query.ts";
import { rowLine } from "../replies/care.ts";
import { sayDay } from "../replies/look-words.ts";
import { numbered } from "../replies/numbered.ts";
import { lineContext, recordLine } from "../replies/record-line.ts";
import { plural } from "../replies/words.ts";
import { careAhead } from "../rig/care-choices.ts";
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

type DueLine = { readonly day: Temporal.PlainDate; readonly text: string };

const lookLines = (turn: Turn, records: Answer["records"]): readonly DueLine[] =>
  records.map((record) => {
    const look = turn.store.looks.of(record.id);
    const day = look === undefined ? turn.today : Temporal.PlainDate.from(look.putOffTo ?? look.due);
    return { day, text: recordLine(record, lineContext(turn)) };
  });

const careLines = (turn: Turn, { period, topic }: DueQuery): readonly DueLine[] => {
  const until = period?.to ?? turn.today.add(MONTH_AHEAD).toString();
  const wanted = new Set(topic.named.map(({ component }) => component));
  return careAhead(turn)
    .filter(({ due }) => due.toString() <= until)
    .filter(({ row }) => wanted.size === 0 || row.components.some((component) => wanted.has(component)))
    .map(({ row, due }) => ({ day: due, text: `${rowLine(row)}.` }));
};

/** The looks that an answer holds and the standing care of the same time, soonest first. */
export const dueReply = (turn: Turn, query: DueQuery, answer: Answer): Reply => {
  const all = [...lookLines(turn, answer.records), ...careLines(turn, query)].toSorted((a, b) =>
    Temporal.PlainDate.compare(a.day, b.day),
  );
  if (all.length === 0) return { text: "Nothing is due for a look in the next month." };
  const lines = all.slice(0, SHOWN).map(({ day, text }) => {
    const overdue = Temporal.PlainDate.compare(day, turn.today) <= 0;
    return `${overdue ? "Now" : sayDay(day, turn.today)}: ${text}`;
  });
  const more = all.length - lines.length;
  const head = `${plural(all.length, "thing")} due:`;
  return { text: `${head}\n${numbered(lines)}${more > 0 ? `\n…and ${more} more.` : ""}` };
};
