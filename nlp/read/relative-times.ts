import type { Build } from "./build.ts";
import { wordAt } from "./ground.ts";
import type { Stretch } from "./scan.ts";
import { touching } from "./windows.ts";

const RELATIVE: ReadonlySet<string> = new Set(["that", "which", "who"]);
const PEOPLE: ReadonlySet<string> = new Set(["i", "we", "he", "she", "they", "you"]);
const GETTING: ReadonlySet<string> = new Set(["bought", "ordered", "got", "picked", "found", "had", "saved"]);
const STANDS_FOR_THING: ReadonlySet<string> = new Set(["one", "ones"]);
const BREAKS: ReadonlySet<string> = new Set(["and", "so", "but", "then", ",", ".", ";"]);

/** As many words as such a clause has before its time. */
const SHORT = 5;

const endsName = ({ scan }: Build, at: number): boolean => {
  const named: readonly Stretch[] = [
    ...touching(scan.components, at - 1, at),
    ...touching(scan.materials, at - 1, at),
  ];
  return STANDS_FOR_THING.has(wordAt(scan, at - 1)) || named.some(({ to }) => to === at);
};

const opensRelative = (build: Build, at: number): boolean => {
  const { scan } = build;
  const opens =
    RELATIVE.has(wordAt(scan, at)) || (PEOPLE.has(wordAt(scan, at)) && GETTING.has(wordAt(scan, at + 1)));
  return opens && endsName(build, at);
};

/** "Replaced the pump that died on Tuesday", "with one I bought in January": a time of what is named, not of the work told before. */
export const isOfWhatIsNamed = (time: Stretch, work: Stretch, build: Build): boolean => {
  for (let at = time.from - 1; at > work.from && at >= time.from - SHORT; at--) {
    if (BREAKS.has(wordAt(build.scan, at))) return false;
    if (opensRelative(build, at)) return true;
  }
  return false;
};
