import type { BotCommand, Message } from "grammy/types";

/** What the open pages of a chat are told. */
export type ChatEvent =
  | {
      readonly kind: "message";
      readonly id: number;
      readonly change: number;
      readonly message: Message | null;
    }
  | { readonly kind: "action"; readonly action: string }
  | { readonly kind: "notice"; readonly text: string; readonly alert: boolean }
  | { readonly kind: "commands"; readonly commands: readonly BotCommand[] }
  | { readonly kind: "title"; readonly title: string };

type Listener = (event: ChatEvent) => void;

export type Hub = {
  /** Returns the function that ends it. */
  listen(chat: number, listener: Listener): () => void;
  tell(chat: number, event: ChatEvent): void;
  tellAll(event: ChatEvent): void;
};

/** Hands events to whoever listens at this moment; nothing is kept. */
export const createHub = (): Hub => {
  const listeners = new Map<Listener, number>();
  const tellWhere = (wanted: (chat: number) => boolean, event: ChatEvent) => {
    for (const [listener, chat] of listeners) if (wanted(chat)) listener(event);
  };
  return {
    listen: (chat, listener) => {
      listeners.set(listener, chat);
      return () => void listeners.delete(listener);
    },
    tell: (chat, event) => tellWhere((each) => each === chat, event),
    tellAll: (event) => tellWhere(() => true, event),
  };
};
