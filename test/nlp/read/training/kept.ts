import type { Candidate } from "../../../../nlp/read/candidate.ts";
import { readBy } from "../../../../nlp/read/index.ts";
import type { Judges } from "../../../../nlp/read/judges.ts";
import type { Scan } from "../../../../nlp/read/scan.ts";
import { anchoredIn, tellers } from "./anchored.ts";
import { MUTE } from "./examples.ts";
import type { Example } from "./linear.ts";
import type { KnownNote } from "./notes.ts";

/** What a note teaches of which candidates are records of their own, when they come from judges that have not seen it. */
export const keptLessonsOf = (note: KnownNote, judges: Judges): Example[] => {
  const lessons: Example[] = [];
  let tokens: Scan["tokens"] = [];
  let known: { readonly all: readonly Candidate[]; readonly found: Set<Candidate> } | undefined;
  const show: Judges = {
    ...MUTE,
    tells: judges.tells,
    described: judges.described,
    aim: judges.aim,
    kind: (signs, telling, setting) => {
      tokens = setting.scan.tokens;
      return judges.kind(signs, telling, setting);
    },
    kept: (signs, each, all) => {
      if (known?.all !== all) known = { all, found: tellers(all, anchoredIn(note, tokens)) };
      lessons.push({ signs, right: known.found.has(each) ? "kept" : "" });
      return 0;
    },
  };
  readBy(show, note.text, note);
  return lessons;
};
