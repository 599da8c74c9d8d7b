import type { RecordId } from "../../shared/history.ts";
import { amend } from "../../shared/memory/amend.ts";
import type { Amend, Amendment } from "../../shared/memory/amendment.ts";
import type { Correction } from "../../shared/memory/correction.ts";
import { EMPTY_SCENE, type Scene } from "../../shared/memory/scene.ts";
import { planLooks } from "../nudges/plan-looks.ts";
import { amendedReply, IMPOSSIBLE, whichReply } from "../replies/amended.ts";
import { momentOf } from "../rig/rig.ts";
import { applyAmend } from "./apply-amend.ts";
import { waitFor } from "./pending.ts";
import type { Turn } from "./turn.ts";

const amended = (turn: Turn, changes: readonly Amend[]): void => {
  const records = [...new Set(changes.flatMap((change) => applyAmend(turn, change)))];
  planLooks(turn, records);
  turn.say(amendedReply(turn, changes, records));
};

const respond = (turn: Turn, correction: Correction, amendment: Amendment): void => {
  switch (amendment.is) {
    case "impossible":
      turn.say({ text: IMPOSSIBLE[amendment.why] });
      return;
    case "which":
      waitFor(turn, { is: "which-to-amend", candidates: [...amendment.candidates], correction });
      turn.say(whichReply(turn, amendment.candidates));
      return;
    case "amend":
      amended(turn, amendment.changes);
  }
};

const NOT_MEANT: ReadonlySet<string> = new Set(["nothing-said-yet", "not-found", "no-such-number"]);

/**
 * Puts right what is kept, in the speaker's words, and says in one line what changed. False, with nothing said, where the
 * words did not announce a correction and there is nothing that they can put right.
 */
export const correctOrNot = (turn: Turn, correction: Correction, scene: Scene): boolean => {
  const amendment = amend(correction, scene, turn.store.history, momentOf(turn.now, turn.rig));
  if (amendment.is === "impossible" && NOT_MEANT.has(amendment.why)) return false;
  respond(turn, correction, amendment);
  return true;
};

/** The same for words that announced a correction: what can't be put right is said. */
export const correct = (turn: Turn, correction: Correction, scene: Scene): void =>
  respond(turn, correction, amend(correction, scene, turn.store.history, momentOf(turn.now, turn.rig)));

/** The same for several records at once, answered together; what is so already is left. */
export const correctAll = (turn: Turn, corrections: readonly Correction[], scene: Scene): void => {
  const moment = momentOf(turn.now, turn.rig);
  const changes = corrections.flatMap((each) => {
    const amendment = amend(each, scene, turn.store.history, moment);
    return amendment.is === "amend" ? amendment.changes : [];
  });
  if (changes.length > 0) amended(turn, changes);
  else turn.say({ text: IMPOSSIBLE["already-so"] });
};

/** The same for records that were picked when it was asked which one is meant. */
export const correctPicked = (turn: Turn, correction: Correction, picked: readonly RecordId[]): void => {
  for (const record of picked)
    correct(turn, { ...correction, target: { by: "record", record } }, EMPTY_SCENE);
};
