import type { Intent } from "../../shared/memory/intent.ts";
import type { Turn } from "./turn.ts";

type Tone = Extract<Intent, { is: "chat" }>["tone"];

const WORDS: Record<Tone, string> = {
  greeting: "Hello. Tell me what you did, or ask what's open.",
  thanks: "You're welcome.",
  ok: "Good.",
  wait: "No hurry.",
};

export const chat = (turn: Turn, tone: Tone): void => {
  turn.say({ text: WORDS[tone] });
};
