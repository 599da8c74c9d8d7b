import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import data from "./shapes.json" with { type: "json" };
import { type Verdict, verdictBy } from "./verdicts.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const DENIALS = new Set(data.denials);
const UNSURE = new Set(data.unsure);
const US = new Set(["i", "we", "im", "ive", "weve", "you"]);
const QUITS = new Set(["quit", "quits", "stopped", "stops"]);
const GOOD_ING = new Set(data.goodIng);
const PARTICLES = listed("phrasesParticles");
/** How far a denial reaches, in words. */
const REACH = 5;

/** "No flap on the test drive", "the lights don't dim any more": trouble that is denied. */
export const troubleGone = (scan: Scan, clause: Stretch): Verdict | undefined => {
  const faults = startingIn(scan.faults, clause.from, clause.to);
  for (const fault of faults) {
    const reach = { from: Math.max(clause.from, fault.from - REACH), to: fault.from };
    const words = scan.tokens.slice(reach.from, reach.to).map((token) => token.norm);
    const at = words.findIndex((word) => DENIALS.has(word));
    if (at < 0 || words.slice(at + 1).some((word) => UNSURE.has(word))) continue;
    return verdictBy({ from: reach.from + at, to: fault.to }, "holding", "trouble-denied");
  }
  return undefined;
};

/** "It quit scratching the wall", "stopped dragging": an end of trouble, but not "quit working". */
export const troubleEnded = (scan: Scan, clause: Stretch): Verdict | undefined => {
  for (let at = clause.from; at < clause.to - 1; at++) {
    const next = wordAt(scan, at + 1);
    if (!QUITS.has(wordAt(scan, at)) || !/.{3}ing$/.test(next) || GOOD_ING.has(next)) continue;
    if (US.has(wordAt(scan, at - 1)) || UNSURE.has(wordAt(scan, at - 1))) continue;
    return verdictBy({ from: at, to: at + 2 }, "holding", "trouble-ended");
  }
  return undefined;
};

/** "It's hanging again", "bed was soaked again": a state that is back, unless it is a job well done. */
export const backAgain = (scan: Scan, clause: Stretch): Verdict | undefined => {
  for (let at = clause.from + 1; at < clause.to; at++) {
    if (wordAt(scan, at) !== "again" || US.has(wordAt(scan, clause.from))) continue;
    const state = PARTICLES.has(wordAt(scan, at - 1)) ? at - 2 : at - 1;
    const word = wordAt(scan, state);
    if (state < clause.from || GOOD_ING.has(word) || !/(?:ing|ed|ent|oke|orn)$/.test(word)) continue;
    return verdictBy({ from: state, to: at + 1 }, "failed", "back-again");
  }
  return undefined;
};
