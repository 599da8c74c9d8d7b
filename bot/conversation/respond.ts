import { understand } from "../../nlp/understand/understand.ts";
import type { Intent } from "../../shared/memory/intent.ts";
import type { Scene } from "../../shared/memory/scene.ts";
import { momentOf } from "../rig/rig.ts";
import { ask } from "./ask.ts";
import { careHeard } from "./care-heard.ts";
import { chat } from "./chat.ts";
import { commandIn } from "./commands.ts";
import { correct, correctAll, correctOrNot } from "./correct.ts";
import { decideOn } from "./decide.ts";
import { gotStuff } from "./got.ts";
import { help } from "./greet.ts";
import { listTicked } from "./leaving-list.ts";
import { misheard } from "./misheard.ts";
import { numberHeard } from "./number-heard.ts";
import { heardBack, pendingIn } from "./pending.ts";
import { picked } from "./pick.ts";
import { sceneOf } from "./scene.ts";
import { set } from "./set.ts";
import { show } from "./show.ts";
import { tell, tellRest } from "./tell.ts";
import { tick } from "./tick.ts";
import type { ToldNote } from "./told.ts";
import { comeHome, leave, readyToLeave } from "./trip.ts";
import type { Turn } from "./turn.ts";
import { undoLast } from "./undo.ts";
import { verdict } from "./verdict.ts";

const act = (turn: Turn, intent: Intent, scene: Scene, note: ToldNote): void => {
  switch (intent.is) {
    case "tell":
      return tell(turn, note, intent);
    case "ask":
      return ask(turn, intent.query);
    case "correct":
      if (intent.also !== undefined) correctAll(turn, [intent.correction, ...intent.also], scene);
      else if (intent.announced) correct(turn, intent.correction, scene);
      else if (!correctOrNot(turn, intent.correction, scene)) tell(turn, note);
      return;
    case "pick":
      return picked(turn, intent.records);
    case "undo":
      return undoLast(turn, "work");
    case "redo":
      return undoLast(turn, "undo");
    case "verdict":
      return verdict(turn, intent.records, intent.outcome, note.id);
    case "tick":
      if (!tick(turn, intent)) tell(turn, note);
      return;
    case "leave":
      return leave(turn, intent);
    case "home":
      return comeHome(turn);
    case "decide":
      return decideOn(turn, intent.topic);
    case "ready":
      return readyToLeave(turn);
    case "show":
      return show(turn, intent.what);
    case "set":
      return set(turn, intent.setting);
    case "help":
      return help(turn);
    case "chat":
      return chat(turn, intent.tone);
  }
};

/** Whatever was asked before is settled, or the talk has moved on; what this message itself asks stands. */
const isOver = (turn: Turn, { pending }: Scene): boolean =>
  JSON.stringify(pendingIn(turn)) === JSON.stringify(pending);

/** What a paired person said: understood here and now, done, and answered. */
export const respond = (turn: Turn, note: ToldNote, replyTo: number | null): void => {
  if (commandIn(turn, note.text) || numberHeard(turn, note) || misheard(turn, note, respond)) return;
  if (listTicked(turn, note) || careHeard(turn, note)) return;
  const scene = sceneOf(turn, note, replyTo);
  const intent = understand(note.text, momentOf(note.said, turn.rig), scene);
  const tells = intent.is === "tell" || intent.is === "correct";
  if (!tells || !gotStuff(turn, note)) act(turn, intent, scene, note);
  if (scene.pending !== null && isOver(turn, scene)) heardBack(turn);
  if (intent.rest !== null && intent.is !== "tell") tellRest(turn, { ...note, text: intent.rest });
};
