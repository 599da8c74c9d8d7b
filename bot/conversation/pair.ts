import { randomInt } from "node:crypto";
import { z } from "zod";
import type { Chat } from "../../store/people.ts";
import type { Store } from "../../store/store.ts";

const CODE_KEY = "pairing.code";
/** Letters and digits that are not taken for one another. */
const ALPHABET = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";
const CODE_LENGTH = 8;

const codeSchema = z.string().nullable().default(null);

/** The code that pairs the next chat; made once and kept until it is used. */
export const pairingCode = (store: Store): string => {
  const kept = codeSchema.parse(store.settings.get(CODE_KEY));
  if (kept !== null) return kept;
  const code = Array.from({ length: CODE_LENGTH }, () => ALPHABET[randomInt(ALPHABET.length)]).join("");
  store.settings.put(CODE_KEY, code);
  return code;
};

/** Whether a code is waiting to be used. */
export const awaitsPairing = (store: Store): boolean =>
  codeSchema.parse(store.settings.get(CODE_KEY)) !== null;

const said = (text: string): string =>
  text
    .replace(/^\/start\b/i, "")
    .replace(/[\s-]/g, "")
    .toUpperCase();

/** Pairs a chat whose message is the code; each code works once. */
export const tryPairing = (store: Store, chat: Chat, text: string, name: string, at: string): boolean => {
  const code = codeSchema.parse(store.settings.get(CODE_KEY));
  if (code === null || said(text) !== code) return false;
  store.settings.put(CODE_KEY, null);
  store.people.pair(chat, name, at);
  return true;
};

export const STRANGER_REPLY =
  "This is a private log. If it is yours, send the code that was shown when it was started.";
