import type { Scan, Stretch } from "./scan.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const KIN = listed("theirRigWhose");
const RIGS = listed("theirRigRigs");
const OURS_NOW = listed("theirRigOursNow");
const OWN = listed("mutedOwn");
/** "My dads little cream van": how many words behind whose it is it may be named. */
const BETWEEN = [1, 2, 3];
/** As many words as may stand before it that say it has become ours. */
const BEFORE = 6;
const LONGEST = 60;

const ENDS = new Set([".", "!", "?", "\n"]);

/** "My brothers trailer: new converter, two batteries": what is told of the rig of others, up to the speaker's own or the end of the sentence. */
export const ofTheirRig = (scan: Scan): Stretch[] => {
  const { tokens } = scan;
  const word = (at: number): string => tokens[at]?.norm ?? "";
  return tokens.flatMap(({ norm }, at) => {
    if (!KIN.has(norm)) return [];
    const rig = BETWEEN.find((ahead) => RIGS.has(word(at + ahead)));
    const before = tokens.slice(Math.max(0, at - BEFORE), at).map((token) => token.norm);
    if (rig === undefined || before.some((each) => OURS_NOW.has(each))) return [];
    const from = at + rig + 1;
    if (startingIn(scan.components, from, from + 1).length > 0) return [];
    let to = from;
    while (to < tokens.length && to - from < LONGEST && !ENDS.has(word(to)) && !OWN.has(word(to))) to++;
    return [{ from, to }];
  });
};
