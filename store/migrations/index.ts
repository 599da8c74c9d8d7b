import { start } from "./0001-start.ts";
import { chat } from "./0002-chat.ts";
import { got } from "./0003-got.ts";
import { lastSaid } from "./0004-last-said.ts";
import type { Migration } from "./migration.ts";

export type { Migration } from "./migration.ts";

export const MIGRATIONS: readonly Migration[] = [start, chat, got, lastSaid];
