import type { RecordId } from "../../shared/history.ts";
import type { Amend } from "../../shared/memory/amendment.ts";
import { keepApart } from "./keep-apart.ts";
import type { Turn } from "./turn.ts";

type SetAmend = Extract<Amend, { do: "set" }>;

const setField = ({ keeper }: Turn, change: SetAmend): void => {
  keeper.setField(change.record, change.field, change.to);
};

/** The newer record was the same thing as before: what it says becomes word on the older one. */
const join = ({ keeper, store, today }: Turn, record: RecordId, into: RecordId): void => {
  const newer = store.history.record(record);
  if (newer === undefined) return;
  const { outcome, date, exposure } = newer.fields;
  if (outcome !== null && outcome !== "untested") {
    keeper.addVerdict(into, { outcome, when: date ?? today.toString(), exposure, noteId: newer.noteId });
  }
  keeper.remove(record);
};

/** Writes one change. Returns the records that it touched. */
export const applyAmend = (turn: Turn, change: Amend): readonly RecordId[] => {
  const { keeper } = turn;
  switch (change.do) {
    case "set":
      setField(turn, change);
      return [change.record];
    case "done-by":
      keeper.setDoneBy(change.record, change.to);
      return [change.record];
    case "remove":
      keeper.remove(change.record);
      return [change.record];
    case "part":
      return keepApart(turn, change.record);
    case "join":
      join(turn, change.record, change.into);
      return [change.record, change.into];
    case "use":
      keeper.setUsage(change.entry.id, change.to);
      return [];
    case "remove-use":
      keeper.removeUsage(change.entry.id);
      return [];
  }
};
