import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { networkInterfaces } from "node:os";
import type { User } from "grammy/types";
import { createBotDoor } from "./bot-door.ts";
import type { ChatLog, PersonRow } from "./chat-log.ts";
import { createFileShelf } from "./file-shelf.ts";
import { isLoopback, knowsHost } from "./http/guard.ts";
import { SAFE_HEADERS, sendJson } from "./http/respond.ts";
import { createHub } from "./hub.ts";
import { createMailroom } from "./mailroom.ts";
import { createPageDoor } from "./page-door.ts";
import { loadPage } from "./page-files.ts";
import { createPeople, type People } from "./people.ts";
import { newSecret } from "./person-key.ts";
import { createUpdateQueue } from "./update-queue.ts";

export type ChatServerOptions = {
  readonly log: ChatLog;
  /** Shaped like a messenger's: the bot's number, a colon, a secret. */
  readonly token: string;
  readonly filesDir: string;
  /** 127.0.0.1 unless given; anything else lets other machines see the page. */
  readonly host?: string | undefined;
  /** 0 for any free port. */
  readonly port: number;
  readonly title?: string | undefined;
  /** Milliseconds since 1970; the machine's clock unless given. */
  readonly now?: (() => number) | undefined;
  readonly onFault?: ((error: unknown) => void) | undefined;
};

export type Started = {
  readonly url: string;
  readonly apiRoot: string;
  /** The page's addresses for other machines; none while only this machine is let in. */
  readonly elsewhere: readonly string[];
};

export type ChatServer = {
  /** Rejects with the system's error when the port is taken or the host is not this machine's. */
  start(): Promise<Started>;
  /** Ends every open request and frees the port. */
  stop(): Promise<void>;
  /** Gives the page another name at its top, the rig's own. */
  rename(title: string): void;
  /** What people do, without a browser: for a demo and for tests. */
  readonly people: People;
  /** Someone new in the chat; whoever opens the page at `#as=SECRET` is this person. */
  join(name: string): { readonly person: PersonRow; readonly secret: string };
};

const BOT_NAME = "Holdfast";

const botOf = (token: string): User => ({
  id: Number.parseInt(token, 10) || 1,
  is_bot: true,
  first_name: BOT_NAME,
  username: "holdfast_bot",
});

const listen = (server: Server, host: string, port: number) =>
  new Promise<AddressInfo>((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, host, () => {
      server.off("error", reject);
      resolve(server.address() as AddressInfo);
    });
  });

const urlOf = (asked = "/"): URL | undefined =>
  URL.canParse(asked, "http://here") ? new URL(asked, "http://here") : undefined;

const shownHost = (host: string) =>
  host === "0.0.0.0" || host === "::" ? "127.0.0.1" : host.includes(":") ? `[${host}]` : host;

const elsewhere = (host: string, port: number): string[] => {
  if (isLoopback(host)) return [];
  if (host !== "0.0.0.0" && host !== "::") return [`http://${shownHost(host)}:${port}/`];
  const addresses = Object.values(networkInterfaces()).flatMap((each) => each ?? []);
  return addresses
    .filter(({ family, internal }) => family === "IPv4" && !internal)
    .map(({ address }) => `http://${address}:${port}/`);
};

/** The embedded chat: the Bot API for the bot on one side, a page for people on the other. */
export const createChatServer = (options: ChatServerOptions): ChatServer => {
  const { log, token, filesDir, host = "127.0.0.1", now = Date.now } = options;
  const onFault = options.onFault ?? (() => undefined);
  let title = options.title ?? BOT_NAME;
  const hub = createHub();
  const queue = createUpdateQueue(log);
  const shelf = createFileShelf(log, filesDir);
  const mailroom = createMailroom(log, queue, hub);
  const people = createPeople({ log, mailroom, queue, shelf, now });
  const office = { bot: botOf(token), log, mailroom, queue, hub, shelf, now };
  const botDoor = createBotDoor({ token, office, onFault });
  const pageDoor = createPageDoor({
    title: () => title,
    people,
    log,
    hub,
    shelf,
    pages: loadPage(),
    onFault,
  });
  const isOurs = knowsHost(host);

  const server = createServer((request, response) => {
    for (const [name, value] of Object.entries(SAFE_HEADERS)) response.setHeader(name, value);
    const url = urlOf(request.url);
    if (!isOurs(request.headers.host) || !url) {
      sendJson(response, 421, { error: "Misdirected request." });
      return;
    }
    const door = /^(\/file)?\/bot/.test(url.pathname) ? botDoor : pageDoor;
    door(request, response, url).catch(onFault);
  });
  server.keepAliveTimeout = 65_000;
  server.requestTimeout = 120_000;

  return {
    start: async () => {
      const address = await listen(server, host, options.port);
      const root = `http://${shownHost(host)}:${address.port}`;
      return { url: `${root}/`, apiRoot: root, elsewhere: elsewhere(host, address.port) };
    },
    stop: () =>
      new Promise((resolve) => {
        queue.close();
        server.close(() => resolve());
        setImmediate(() => server.closeAllConnections());
      }),
    rename: (name) => {
      title = name;
      hub.tellAll({ kind: "title", title });
    },
    people,
    join: (name) => {
      const secret = newSecret();
      return { person: people.enter(secret, name), secret };
    },
  };
};
