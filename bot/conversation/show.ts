import type { Intent } from "../../shared/memory/intent.ts";
import type { Turn } from "./turn.ts";

type What = Extract<Intent, { is: "show" }>["what"];

/** Says where to find what the chat can't show. */
export const show = (turn: Turn, what: What): void => {
  turn.say({
    text:
      what === "backup"
        ? "Backups are made on the computer that I run on: “npm run backup”. It is one folder, and “npm run restore” brings it back."
        : "I can't draw that yet. Ask me in words, for a part or a time: “what did I do to the roof in 2025?”",
  });
};
