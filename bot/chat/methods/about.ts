import type { BotCommand, UserFromGetMe } from "grammy/types";
import { z } from "zod";
import type { ChatLog } from "../chat-log.ts";
import { badRequest } from "../refusal.ts";
import { loose, method } from "./method.ts";

const command = z.object({
  command: z.string().regex(/^[a-z0-9_]{1,32}$/, { error: "BOT_COMMAND_INVALID" }),
  description: z.string().min(1).max(256),
});
const commands = z.array(command).max(100);

/** What the bot last said that it can be told, for every chat alike. */
export const commandsOf = (log: ChatLog): BotCommand[] => commands.parse(JSON.parse(log.commands() ?? "[]"));

export const setMyCommands = method(z.object({ commands: loose(commands) }), ({ log, hub }, params) => {
  log.setCommands(JSON.stringify(params.commands));
  hub.tellAll({ kind: "commands", commands: params.commands });
  return true;
});

export const getMyCommands = method(z.object({}), ({ log }) => commandsOf(log));

export const deleteMyCommands = method(z.object({}), ({ log, hub }) => {
  log.setCommands("[]");
  hub.tellAll({ kind: "commands", commands: [] });
  return true;
});

export const getMe = method(
  z.object({}),
  ({ bot }): UserFromGetMe => ({
    ...bot,
    is_bot: true,
    username: bot.username ?? "holdfast_bot",
    can_join_groups: false,
    can_read_all_group_messages: false,
    can_manage_bots: false,
    supports_inline_queries: false,
    can_connect_to_business: false,
    has_main_web_app: false,
    has_topics_enabled: false,
    allows_users_to_create_topics: false,
    supports_join_request_queries: false,
  }),
);

/** There is never a webhook: grammY asks for its removal before it polls. */
export const deleteWebhook = method(z.object({}), () => true);

export const getFile = method(z.object({ file_id: z.string() }), ({ shelf }, { file_id: id }) => {
  const file = shelf.get(id);
  if (!file) throw badRequest("wrong file_id or the file is temporarily unavailable");
  return {
    file_id: file.id,
    file_unique_id: file.id.slice(0, 12),
    file_size: file.size,
    file_path: file.path,
  };
});
