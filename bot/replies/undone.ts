import type { Change } from "../../store/journal.ts";
import type { Reply, Turn } from "../conversation/turn.ts";
import { thingName } from "./record-line.ts";
import { doneWord, doWord, listed, plural } from "./words.ts";

const idsOf = (changes: readonly Change[], thing: Change["thing"]): number[] => [
  ...new Set(changes.filter((change) => change.thing === thing).map((change) => Number(change.thingId))),
];

/** "Roof seam (sealed)", "Roof seam (to seal)", "Roof seam (its fault)". */
const title = (turn: Turn, id: number): string => {
  const fields = turn.store.history.record(id)?.fields;
  if (fields === undefined) return "a record";
  const { kind, action } = fields;
  const what = kind === "todo" ? `to ${doWord(action)}` : kind === "fault" ? "its fault" : doneWord(action);
  return `${thingName(fields)} (${what})`;
};

const wentAway = (changes: readonly Change[]): boolean =>
  changes.every((change) => change.field === "removed" && change.was === 1);

/** What was taken back, in one line, with a way to bring it back. */
export const undoneReply = (turn: Turn, reversed: readonly Change[], kept: readonly Change[]): Reply => {
  if (reversed.length === 0) {
    const why =
      kept.length > 0 ? "It was changed again since, so I left it as it is." : "That is undone already.";
    return { text: why };
  }
  const records = idsOf(reversed, "records");
  const uses = idsOf(reversed, "use_log");
  const settings = idsOf(reversed, "settings").length > 0;
  const parts = [
    ...(records.length > 3 ? [plural(records.length, "record")] : records.map((id) => title(turn, id))),
    ...(uses.length > 0 ? ["the logged use"] : []),
    ...(settings ? ["the setting"] : []),
  ];
  const verb = wentAway(reversed) ? "Taken away" : "Put back as before";
  const left = kept.length > 0 ? " What was changed again since stays." : "";
  return {
    text: `${verb}: ${parts.length === 0 ? "what that changed" : listed(parts)}.${left}`,
    buttons: [[{ label: "Undo that", tap: { tap: "undo", turn: turn.turnId } }]],
    shows: { of: "note", records },
  };
};
