import { setTimeout as wait } from "node:timers/promises";
import { Bot, GrammyError } from "grammy";
import type { Logger } from "pino";
import type { Store } from "../../store/store.ts";
import type { Clock } from "../clock.ts";
import { COMMANDS } from "../conversation/commands.ts";

export type Poller = { readonly bot: Bot; start(): Promise<void>; stop(): Promise<void> };

const UPDATES = ["message", "edited_message", "callback_query"] as const;
const SHORT_WAIT_MS = 3000;
const WRONG_TOKEN_WAIT_MS = 30_000;

type Trouble = "wrong-token" | "no-connection" | "someone-else-polls";

const TROUBLE: Record<Trouble, string> = {
  "wrong-token": "The messenger does not accept the token. Check HOLDFAST_TOKEN; I keep trying.",
  "no-connection": "The messenger can't be reached. I keep trying; nothing is lost meanwhile.",
  "someone-else-polls": "Another program polls with the same token. Stop it; I keep trying.",
};

const troubleOf = (error: unknown): Trouble => {
  if (!(error instanceof GrammyError)) return "no-connection";
  if (error.error_code === 401 || error.error_code === 404) return "wrong-token";
  return error.error_code === 409 ? "someone-else-polls" : "no-connection";
};

/**
 * Polls one Bot API and only puts updates into the inbox; each is kept before the next poll acknowledges it. Keeps
 * trying at short waits whatever happens to the network, and says so once.
 */
export const createPoller = (parts: {
  readonly channel: string;
  readonly token: string;
  readonly apiRoot: string;
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Logger;
  readonly onStored: () => void;
  /** The update could not be kept: the program must end before it is acknowledged. */
  readonly onUnkept: (error: unknown) => void;
  readonly say: (sentence: string) => void;
}): Poller => {
  const { channel, store, clock, say, log } = parts;
  const bot = new Bot(parts.token, { client: { apiRoot: parts.apiRoot } });
  const stopping = new AbortController();
  let told: Trouble | undefined;

  bot.use((context) => {
    try {
      store.inbox.put(channel, context.update.update_id, context.update, clock.now().toString());
    } catch (error) {
      parts.onUnkept(error);
      throw error;
    }
    parts.onStored();
  });

  const poll = async (): Promise<void> => {
    bot.botInfo = await bot.api.getMe();
    await bot.api.setMyCommands(COMMANDS.map(({ name, description }) => ({ command: name, description })));
    if (told !== undefined) say("Connected again.");
    told = undefined;
    await bot.start({ allowed_updates: UPDATES });
  };

  const restAfter = async (error: unknown): Promise<void> => {
    const trouble = troubleOf(error);
    if (trouble !== told) say(TROUBLE[trouble]);
    told = trouble;
    log.warn({ channel, trouble }, "polling stopped for a moment");
    await wait(trouble === "wrong-token" ? WRONG_TOKEN_WAIT_MS : SHORT_WAIT_MS, undefined, {
      signal: stopping.signal,
    });
  };

  const keepPolling = async (): Promise<void> => {
    while (!stopping.signal.aborted) {
      try {
        await poll();
      } catch (error) {
        if (stopping.signal.aborted as boolean) return;
        await restAfter(error).catch(() => undefined);
      }
    }
  };

  return {
    bot,
    start: keepPolling,
    stop: async () => {
      stopping.abort();
      if (bot.isRunning()) await bot.stop().catch(() => undefined);
    },
  };
};
