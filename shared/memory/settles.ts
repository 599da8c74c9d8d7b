import type { KeptRecord } from "../history.ts";
import type { RecordFields } from "../record.ts";
import { compareMaterials } from "./materials.ts";
import { meet, ofAnotherPart, particularsOf } from "./part.ts";
import type { Told } from "./told.ts";
import { isCure, putsIn, sameAction } from "./work.ts";

const doesWhatWasMeant = (done: RecordFields, meant: RecordFields): boolean => {
  if (meant.kind !== "todo") return false;
  if (meant.action === "inspect" || meant.action === "test") return true;
  if (sameAction(done.action, meant.action))
    return compareMaterials(done.materials, meant.materials) !== "different";
  if (putsIn(done.action) && putsIn(meant.action)) return true;
  return (
    isCure(done.action) &&
    isCure(meant.action) &&
    compareMaterials(done.materials, meant.materials) === "same"
  );
};

/**
 * Work on one part leaves the trouble of another part of the same thing open. Care that cures nothing deals with a
 * trouble only when the words say that the thing is right now.
 */
const touchesTrouble = ({ draft: { fields }, words }: Told, open: RecordFields): boolean => {
  if (open.fault === null) return false;
  const work = particularsOf(fields, words);
  const trouble = particularsOf(open);
  if (meet(work, trouble)) return true;
  return (isCure(fields.action) || fields.outcome === "holding") && !ofAnotherPart(trouble, work);
};

const settlesOne = (told: Told, open: KeptRecord): boolean => {
  const { fields } = told.draft;
  if (fields.kind === "check") return fields.outcome === "holding";
  if (fields.kind !== "repair" || fields.outcome === "failed") return false;
  return doesWhatWasMeant(fields, open.fields) || touchesTrouble(told, open.fields);
};

/** The open todos and faults that this account of work or of a good look deals with. */
export const settledBy = (told: Told, open: readonly KeptRecord[]): readonly KeptRecord[] =>
  open.filter((record) => settlesOne(told, record));
