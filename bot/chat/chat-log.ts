/** Someone who opened the chat page; the chat with the bot has the same number. The name is empty until told. */
export type PersonRow = { readonly chat: number; readonly name: string };

/** A message as it stands now. Every addition, edit and deletion gets the next `change` of the whole log. */
export type MessageRow = {
  readonly id: number;
  readonly chat: number;
  readonly change: number;
  /** The message without its id, as JSON; null once it was deleted. */
  readonly body: string | null;
};

/** Something the bot has not confirmed yet; `body` is the JSON of the field that `kind` names. */
export type UpdateRow = { readonly id: number; readonly kind: string; readonly body: string };

/** A file on the shelf; `path` is relative to the folder of files, `size` in bytes. */
export type FileRow = {
  readonly id: string;
  readonly path: string;
  readonly name: string;
  readonly mime: string;
  readonly size: number;
};

/** What the chat remembers. Every method is durable when it returns; numbers are never given twice. */
export type ChatLog = {
  /** Runs `work` as one transaction: all of it is kept, or, when it throws, none. */
  atomically<T>(work: () => T): T;

  addPerson(secretHash: string, name: string): PersonRow;
  personBySecret(secretHash: string): PersonRow | undefined;
  person(chat: number): PersonRow | undefined;
  renamePerson(chat: number, name: string): void;

  /** `once` is kept with the message, and must not have been used. */
  addMessage(chat: number, body: string, once: string | null): MessageRow;
  message(id: number): MessageRow | undefined;
  messageByOnce(once: string): MessageRow | undefined;
  setMessage(id: number, body: string | null): MessageRow;
  /** The last `limit` messages with an id below `before`, oldest first, deleted ones left out. */
  messagesBefore(chat: number, before: number, limit: number): MessageRow[];
  /** What changed in a chat after `change`, in order of change, deletions included. */
  changesAfter(chat: number, change: number): MessageRow[];
  lastChange(): number;

  addUpdate(kind: string, body: string): UpdateRow;
  updatesFrom(id: number, limit: number): UpdateRow[];
  lastUpdates(count: number): UpdateRow[];
  /** Forgets the updates with an id below `id`. */
  confirmUpdates(id: number): void;

  /** False when this tap is already known. */
  addTap(id: string, chat: number): boolean;
  tapChat(id: string): number | undefined;

  addFile(file: FileRow): void;
  file(id: string): FileRow | undefined;

  setCommands(json: string): void;
  commands(): string | undefined;
};
