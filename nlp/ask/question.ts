import type { Query, Topic } from "../../shared/memory/query.ts";
import type { Edtf } from "../../shared/record.ts";

/** What a question asks of the log, or of the outlook. */
export type Question = Query | { readonly ask: "decide"; readonly topic: Topic } | { readonly ask: "ready" };

/** What "it" in a question may be about. */
export type Before = {
  readonly question: Question;
  /** Asked or told just now, and not days ago. */
  readonly fresh: boolean;
  /** Of the work that was shown first. */
  readonly date?: Edtf | null;
};
