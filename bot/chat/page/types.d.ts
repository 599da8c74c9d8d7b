/** The part of the Bot API's Message that the page shows. */
export type Entity = { type: string; offset: number; length: number };
export type FileOfMessage = {
  file_id: string;
  file_size?: number;
  file_name?: string;
  mime_type?: string;
  duration?: number;
  width?: number;
  height?: number;
};
export type Button = { text: string; callback_data: string };
export type Message = {
  message_id: number;
  date: number;
  edit_date?: number;
  from: { id: number; is_bot: boolean; first_name: string };
  text?: string;
  entities?: Entity[];
  caption?: string;
  caption_entities?: Entity[];
  photo?: FileOfMessage[];
  document?: FileOfMessage;
  voice?: FileOfMessage;
  audio?: FileOfMessage;
  reply_to_message?: Message;
  reply_markup?: { inline_keyboard: Button[][] };
};

export type Command = { command: string; description: string };
export type Welcome = {
  title: string;
  chat: number;
  name: string;
  commands: Command[];
  change: number;
  messages: Message[];
  more: boolean;
};

export type ChatEvent =
  | { kind: "message"; id: number; change: number; message: Message | null }
  | { kind: "action"; action: string }
  | { kind: "notice"; text: string; alert: boolean }
  | { kind: "commands"; commands: Command[] }
  | { kind: "title"; title: string };

export type FileKind = "photo" | "document" | "voice" | "audio";

/** Something that waits to be sent, in the order in which it was done. */
export type Waiting = { key: string; at: number; refused?: string } & (
  | { act: "say"; text: string; replyTo?: number }
  | { act: "edit"; message: number; text: string }
  | { act: "tap"; message: number; data: string }
  | {
      act: "file";
      kind: FileKind;
      name: string;
      bytes: Blob;
      caption?: string;
      durationSeconds?: number;
      replyTo?: number;
    }
);
