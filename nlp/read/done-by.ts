import type { Clause } from "./clauses.ts";
import { wordAt } from "./ground.ts";
import type { Scan } from "./scan.ts";
import type { Event } from "./told.ts";
import { wordsOf } from "./where.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const LEADS = listed("doneByLeads");

/** Who did the work when the note names someone other than its speaker: "the shop", "my son in law". */
export const doneBy = (event: Event, scan: Scan, clauses: readonly Clause[]): string | null => {
  for (const deed of event.deeds) {
    const clause = clauses[deed.clause];
    if (clause === undefined) continue;
    const doer = startingIn(scan.cues, clause.from, clause.to).find((cue) => cue.value === "doer");
    if (doer === undefined) continue;
    const passive = wordAt(scan, doer.from - 1) === "by";
    const subject =
      doer.to <= deed.at &&
      (doer.from === clause.from || LEADS.has(wordAt(scan, doer.from - 1)) || doer.from - clause.from <= 6);
    if (passive || subject) return wordsOf(scan, doer).toLowerCase();
  }
  return null;
};
