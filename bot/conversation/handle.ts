import type { Update } from "grammy/types";
import type { Temporal } from "temporal-polyfill";
import type { InboxItem } from "../../store/inbox.ts";
import { NOTHING_SHOWN } from "../../store/outbox.ts";
import type { Chat } from "../../store/people.ts";
import type { Store } from "../../store/store.ts";
import { beginTurn } from "./begin-turn.ts";
import { greet } from "./greet.ts";
import { type Incoming, incomingFrom } from "./incoming.ts";
import { keepNote } from "./keep-note.ts";
import { STRANGER_REPLY, tryPairing } from "./pair.ts";
import { photo } from "./photo.ts";
import { respond } from "./respond.ts";
import { reword } from "./reword.ts";
import { type Hears, sound } from "./sound.ts";
import { tapped } from "./tap.ts";
import type { Turn } from "./turn.ts";

export type Deps = { readonly store: Store; readonly hears: Hears };

type FromPerson = Exclude<Incoming, { is: "nothing" }>;

const sayPlain = (store: Store, chat: Chat, text: string, now: Temporal.Instant): void => {
  store.outbox.put({
    ...chat,
    method: "sendMessage",
    payload: { text },
    shows: NOTHING_SHOWN,
    turnId: null,
    at: now.toString(),
  });
};

/** A stranger is let in by the code, and hears one neutral sentence otherwise. */
const meetStranger = (
  store: Store,
  item: InboxItem,
  incoming: FromPerson,
  chat: Chat,
  now: Temporal.Instant,
): void => {
  if (incoming.is === "tap") return;
  if (incoming.is === "text" && tryPairing(store, chat, incoming.text, incoming.senderName, now.toString())) {
    const turn = beginTurn(store, item.id, chat, now);
    if (turn !== undefined) greet(turn);
    return;
  }
  sayPlain(store, chat, STRANGER_REPLY, now);
};

const UNREADABLE =
  "I can read text, voice notes and photos with a few words. I could not use that one. Say it in words and I'll keep it.";

const take = (turn: Turn, item: InboxItem, incoming: FromPerson, deps: Deps): void => {
  switch (incoming.is) {
    case "text":
      return incoming.edited ? reword(turn, item, incoming) : text(turn, item, incoming);
    case "sound":
      return sound(turn, item, incoming, deps.hears);
    case "photo":
      return photo(turn, item, incoming);
    case "tap":
      return tapped(turn, incoming);
    case "unreadable":
      return void turn.say({ text: UNREADABLE });
  }
};

const text = (turn: Turn, item: InboxItem, incoming: Extract<Incoming, { is: "text" }>): void => {
  const noteId = keepNote(turn, item, incoming, incoming.text);
  respond(turn, { id: noteId, said: incoming.saidAt, text: incoming.text }, incoming.replyTo);
};

/** Handles one update; everything it writes belongs in one transaction. Returns the turn, for whoever wants to see it. */
export const handle = (deps: Deps, item: InboxItem, now: Temporal.Instant): Turn | undefined => {
  const incoming = incomingFrom(item.body as Update);
  if (incoming.is === "nothing") return undefined;
  const chat = { channel: item.channel, chatId: incoming.chatId };
  const turn = beginTurn(deps.store, item.id, chat, now);
  if (turn === undefined) meetStranger(deps.store, item, incoming, chat, now);
  else take(turn, item, incoming, deps);
  return turn;
};

const SET_ASIDE =
  "Something in me broke over that one. Your words are kept, and nothing else was changed. Say it another way, or go on.";

/** The word to the person when handling an update kept failing. */
export const apologise = (store: Store, item: InboxItem, now: Temporal.Instant): void => {
  const incoming = incomingFrom(item.body as Update);
  if (incoming.is === "nothing") return;
  const chat = { channel: item.channel, chatId: incoming.chatId };
  if (store.people.of(chat) !== undefined) sayPlain(store, chat, SET_ASIDE, now);
};
