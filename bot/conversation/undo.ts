import { planLooks } from "../nudges/plan-looks.ts";
import { undoneReply } from "../replies/undone.ts";
import type { Turn } from "./turn.ts";

/** Takes back what one turn changed; saying or tapping it again brings it back. */
export const undoTurn = (turn: Turn, turnId: number): void => {
  const { reversed, kept } = turn.keeper.undo(turnId);
  if (reversed.length > 0) turn.store.turns.undoes(turn.turnId, turnId);
  planLooks(turn, "all");
  turn.say(undoneReply(turn, reversed, kept));
};

/** Undoes the last work, or, to bring it back, the last undo. */
export const undoLast = (turn: Turn, which: "work" | "undo"): void => {
  const last = turn.store.turns.lastChanging(turn.chat, turn.turnId, which);
  if (last === undefined) {
    turn.say({ text: which === "work" ? "There is nothing to undo." : "There is nothing to bring back." });
    return;
  }
  undoTurn(turn, last);
};
