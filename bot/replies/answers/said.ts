import { sayDate } from "../../../shared/edtf.ts";
import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { shortened } from "../words.ts";
import { nothingKnown } from "./parts.ts";

const NOTES_SHOWN = 4;
const QUOTE_LENGTH = 400;

export const saidReply = (turn: Turn, answer: Answer): Reply => {
  if (answer.notes.length === 0) return { text: nothingKnown(turn, answer) };
  const shown = answer.notes.slice(0, NOTES_SHOWN);
  const quotes = shown.map(
    ({ text, saidAt, saidBy }) =>
      `${saidBy}, ${sayDate(saidAt.slice(0, 10), turn.today, turn.rig.hemisphere)}:\n“${shortened(text, QUOTE_LENGTH)}”`,
  );
  const voices = shown.filter(({ noteId }) => turn.store.notes.get(noteId)?.media?.kind === "voice");
  return {
    text: quotes.join("\n\n"),
    buttons: voices.map(({ noteId, saidAt }) => [
      {
        label: `Play ${sayDate(saidAt.slice(0, 10), turn.today, turn.rig.hemisphere)}`,
        tap: { tap: "words", note: noteId },
      },
    ]),
  };
};
