import type { IncomingMessage, ServerResponse } from "node:http";
import type { ChatLog } from "./chat-log.ts";
import type { ChatEvent, Hub } from "./hub.ts";
import { messageOf } from "./messages.ts";

const HEARTBEAT_MS = 15_000;
/** A page that is this far behind, in bytes, is let go; it comes back and resumes. */
const MAX_BEHIND = 4 * 1024 * 1024;

const written = (event: ChatEvent): string => {
  const resumeAt = event.kind === "message" ? `id: ${event.change}\n` : "";
  return `${resumeAt}data: ${JSON.stringify(event)}\n\n`;
};

const resumePoint = (request: IncomingMessage, url: URL, log: ChatLog): number => {
  const given = request.headers["last-event-id"] ?? url.searchParams.get("after");
  return /^\d{1,15}$/.test(String(given)) ? Number(given) : log.lastChange();
};

type Stream = {
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
  readonly url: URL;
  readonly chat: number;
  readonly log: ChatLog;
  readonly hub: Hub;
  /** What the log is called now: it may have been renamed since the page was told. */
  readonly title: string;
};

/** Streams a chat's changes as server-sent events, from the change that the page saw last. Never ends by itself. */
export const openEvents = ({ request, response, url, chat, log, hub, title }: Stream): void => {
  response.writeHead(200, {
    "content-type": "text/event-stream",
    "cache-control": "no-store",
    "x-accel-buffering": "no",
  });
  const write = (text: string) => {
    response.write(text);
    if (response.writableLength > MAX_BEHIND) response.destroy();
  };
  write("retry: 1000\n\n");
  write(written({ kind: "title", title }));
  for (const row of log.changesAfter(chat, resumePoint(request, url, log))) {
    write(written({ kind: "message", id: row.id, change: row.change, message: messageOf(row) ?? null }));
  }
  const stop = hub.listen(chat, (event) => write(written(event)));
  const beat = setInterval(() => write(": still here\n\n"), HEARTBEAT_MS);
  response.on("close", () => {
    clearInterval(beat);
    stop();
  });
};
