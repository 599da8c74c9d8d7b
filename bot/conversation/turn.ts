import type { Temporal } from "temporal-polyfill";
import type { Answer } from "../../shared/memory/answer-data.ts";
import type { Keeper } from "../../store/keeper.ts";
import { NOTHING_SHOWN, type Shown } from "../../store/outbox.ts";
import type { Chat, Person } from "../../store/people.ts";
import type { Store } from "../../store/store.ts";
import { shortened } from "../replies/words.ts";
import { dayOf, type Rig } from "../rig/rig.ts";
import { type Button, keyboard } from "./buttons.ts";

export type Reply = {
  readonly text: string;
  readonly buttons?: readonly (readonly Button[])[];
  readonly shows?: Partial<Shown>;
};

/** The Bot API takes 4,096 characters a message; a little less leaves room for a mark of continuation. */
const MESSAGE_LENGTH = 4000;
const QUOTE_LENGTH = 600;

const cutAtLine = (text: string): readonly [head: string, rest: string] => {
  if (text.length <= MESSAGE_LENGTH) return [text, ""];
  const line = text.lastIndexOf("\n", MESSAGE_LENGTH);
  const space = text.lastIndexOf(" ", MESSAGE_LENGTH);
  const cut = line > 0 ? line : space > 0 ? space : MESSAGE_LENGTH;
  return [text.slice(0, cut), text.slice(cut).trimStart()];
};

type TurnParts = Pick<Turn, "store" | "keeper" | "turnId" | "chat" | "person" | "rig" | "now">;

/** One message being handled: what it may use, and what it says back. */
export class Turn {
  readonly store: Store;
  readonly keeper: Keeper;
  readonly turnId: number;
  readonly chat: Chat;
  readonly person: Person;
  readonly rig: Rig;
  readonly now: Temporal.Instant;
  /** When set, the first reply is put into this earlier message of ours, below the words that were heard. */
  voice: { readonly reply: number; readonly words: string } | null = null;
  /** When set, replies are gathered here instead of being sent. */
  gathered: Reply[] | null = null;
  /** The answer as data, when a question was asked. */
  answer: Answer | null = null;

  constructor(parts: TurnParts) {
    this.store = parts.store;
    this.keeper = parts.keeper;
    this.turnId = parts.turnId;
    this.chat = parts.chat;
    this.person = parts.person;
    this.rig = parts.rig;
    this.now = parts.now;
  }

  get today(): Temporal.PlainDate {
    return dayOf(this.now, this.rig);
  }

  /** Puts a reply into the outbox; a long one goes out in parts, the buttons under the last. Returns its outbox id. */
  say(reply: Reply): number {
    if (this.gathered !== null) {
      this.gathered.push(reply);
      return 0;
    }
    if (this.voice !== null) return this.sayOfVoice(this.voice, reply);
    const [head, rest] = cutAtLine(reply.text);
    if (rest === "") return this.put("sendMessage", reply);
    this.put("sendMessage", { text: head });
    return this.say({ ...reply, text: rest });
  }

  private sayOfVoice(voice: { readonly reply: number; readonly words: string }, reply: Reply): number {
    this.voice = null;
    return this.edit(voice.reply, {
      ...reply,
      text: `“${shortened(voice.words, QUOTE_LENGTH)}”\n\n${reply.text}`,
    });
  }

  /** Replaces what an earlier message of ours says. */
  edit(outboxId: number, reply: Reply): number {
    const [head, rest] = cutAtLine(reply.text);
    if (rest === "") return this.put("editMessageText", reply, outboxId);
    this.put("editMessageText", { text: head }, outboxId);
    return this.say({ ...reply, text: rest });
  }

  /** Ends the waiting mark of a tapped button. */
  acknowledge(tapId: string, text = ""): void {
    this.store.outbox.put({
      ...this.chat,
      method: "answerCallbackQuery",
      payload: { callback_query_id: tapId, ...(text === "" ? {} : { text }) },
      shows: NOTHING_SHOWN,
      turnId: this.turnId,
      at: this.now.toString(),
    });
  }

  /** Whether this chat was told these words within the last week. */
  saidLately(words: string): boolean {
    return this.store.outbox.hasSaid(this.chat, words, this.now.subtract({ hours: 7 * 24 }).toString());
  }

  /** Sends a sound that is kept in the media folder. */
  play(file: string): void {
    this.store.outbox.put({
      ...this.chat,
      method: "sendVoice",
      payload: { voice: { file } },
      shows: NOTHING_SHOWN,
      turnId: this.turnId,
      at: this.now.toString(),
    });
  }

  private put(method: "sendMessage" | "editMessageText", reply: Reply, edits?: number): number {
    return this.store.outbox.put({
      ...this.chat,
      method,
      payload: {
        text: reply.text,
        ...(reply.buttons === undefined || reply.buttons.length === 0
          ? {}
          : { reply_markup: keyboard(reply.buttons) }),
      },
      ...(edits === undefined ? {} : { edits }),
      shows: { ...NOTHING_SHOWN, ...reply.shows },
      turnId: this.turnId,
      at: this.now.toString(),
    });
  }
}
