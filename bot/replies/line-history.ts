import { sayDate } from "../../shared/edtf.ts";
import type { KeptRecord } from "../../shared/history.ts";
import type { Turn } from "../conversation/turn.ts";
import { doneWord, listed, sayExposure } from "./words.ts";

const attempt = (turn: Turn, { fields }: KeptRecord): string => {
  const materials = fields.materials.length === 0 ? "" : ` with ${listed(fields.materials)}`;
  const date = fields.date === null ? "" : `, ${sayDate(fields.date, turn.today, turn.rig.hemisphere)}`;
  const through = fields.exposure.length === 0 ? "" : ` after ${listed(fields.exposure.map(sayExposure))}`;
  const end = fields.outcome === "failed" ? `, let go${through}` : "";
  return `${doneWord(fields.action)}${materials}${date}${end}`;
};

/** Earlier attempts on the same trouble, newest first: "Before that: patched with butyl tape, June 2024, let go." */
export const lineHistory = (turn: Turn, record: KeptRecord): string => {
  const earlier = turn.store.history
    .records({ line: record.line, kinds: ["repair"] })
    .filter(({ id, closedBy }) => id !== record.id && closedBy !== null);
  if (earlier.length === 0) return "";
  return `Before that: ${earlier
    .slice(0, 4)
    .map((each) => attempt(turn, each))
    .join("; ")}.`;
};
