import { tellsAnything } from "../../nlp/read/tells-anything.ts";
import { thingsIn } from "../../nlp/understand/older.ts";
import type { KeptRecord } from "../../shared/history.ts";
import { isToBuy } from "../../shared/memory/answer-open.ts";
import { plainWords } from "../../shared/memory/words.ts";
import { tellsGot } from "../../shared/memory/work.ts";
import type { Moment } from "../../shared/reading.ts";
import { lineOf } from "../replies/answers/parts.ts";
import { withNumbers } from "../replies/numbered.ts";
import { momentOf } from "../rig/rig.ts";
import type { ToldNote } from "./told.ts";
import type { Turn } from "./turn.ts";

/** Longer talk tells of more than an errand. */
const MOST_WORDS = 25;

const namesStuff = (text: string, { fields }: KeptRecord): boolean => {
  const said = ` ${plainWords(text).join(" ")} `;
  return fields.materials.some((material) => said.includes(` ${plainWords(material).join(" ")} `));
};

/** Open jobs for which what was got is wanted. */
const wanting = ({ store: { history } }: Turn, text: string, moment: Moment): readonly KeptRecord[] => {
  const things = new Set(thingsIn(text, moment));
  return history
    .records({ open: true })
    .filter((record) => isToBuy(history, record))
    .filter((record) => namesStuff(text, record) || things.has(record.fields.component));
};

/**
 * Takes what was got off the shopping list and leaves its job open: "picked up the lap sealant". False, with nothing said,
 * where nothing on the list is named.
 */
export const gotStuff = (turn: Turn, note: ToldNote): boolean => {
  const { text } = note;
  const moment = momentOf(note.said, turn.rig);
  if (!tellsGot(text) || plainWords(text).length > MOST_WORDS || tellsAnything(text, moment)) return false;
  const records = wanting(turn, text, moment);
  if (records.length === 0) return false;
  for (const { id } of records) turn.keeper.got(id);
  const jobs = records.length === 1 ? "job stays" : "jobs stay";
  turn.say({
    text: [
      `Off the shopping list. The ${jobs} open:`,
      ...withNumbers(records.map((record) => lineOf(turn, record))),
    ].join("\n"),
    buttons: [[{ label: "Undo", tap: { tap: "undo", turn: turn.turnId } }]],
    shows: { of: "note", records: records.map(({ id }) => id), noteId: note.id },
  });
  return true;
};
