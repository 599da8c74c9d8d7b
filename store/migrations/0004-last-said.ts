import type { Migration } from "./migration.ts";

/** What was said last in a chat is looked up with every message, however long the chat has gone on. */
export const lastSaid: Migration = {
  id: 4,
  name: "last-said",
  up: `
    CREATE INDEX outbox_said ON outbox (channel, chat_id, id) WHERE method IN ('sendMessage', 'editMessageText');
    CREATE INDEX outbox_shown_of ON outbox (channel, chat_id, shows ->> '$.of', id) WHERE shows ->> '$.of' IS NOT NULL;
    CREATE INDEX outbox_told ON outbox (channel, chat_id, id) WHERE shows ->> '$.noteId' IS NOT NULL;
    CREATE INDEX outbox_lists ON outbox (channel, chat_id, id) WHERE shows ->> '$.lines[0]' IS NOT NULL;
  `,
};
