import type { IncomingMessage, ServerResponse } from "node:http";
import { z } from "zod";
import type { Door } from "./bot-door.ts";
import type { ChatLog, PersonRow } from "./chat-log.ts";
import { isShown } from "./file-kinds.ts";
import type { FileShelf } from "./file-shelf.ts";
import { refuseOtherSites } from "./http/guard.ts";
import { isHangup, sendFile, sendJson } from "./http/respond.ts";
import type { Hub } from "./hub.ts";
import { messageOf } from "./messages.ts";
import { commandsOf } from "./methods/about.ts";
import { createActs, readPageJson, understood } from "./page-acts.ts";
import { openEvents } from "./page-events.ts";
import type { PageFile } from "./page-files.ts";
import type { People } from "./people.ts";
import { newSecret, personBehind, secretCookie, secretOf } from "./person-key.ts";
import { Refusal } from "./refusal.ts";

type Reception = {
  /** The name at the top of the page, as it is now. */
  readonly title: () => string;
  readonly people: People;
  readonly log: ChatLog;
  readonly hub: Hub;
  readonly shelf: FileShelf;
  readonly pages: ReadonlyMap<string, PageFile>;
  readonly onFault: (error: unknown) => void;
};

const MESSAGES_AT_ONCE = 60;

const historyAsked = z.object({ before: z.coerce.number().int().nonnegative() });

/** `as`: the secret of a person who joined elsewhere and goes on in this browser. */
const helloShape = z.object({ as: z.string().length(32).optional() });

const attachment = (name: string) =>
  `attachment; filename*=UTF-8''${encodeURIComponent(name).replaceAll("'", "%27")}`;

const notHere = () => new Refusal(404, "There is nothing here.");

/** The way in for people: the page, and what it asks and tells. Everything but the page itself needs the secret. */
export const createPageDoor = ({ title, people, log, hub, shelf, pages, onFault }: Reception): Door => {
  const acts = createActs(people);

  const history = (person: PersonRow, before: number) => {
    const rows = log.messagesBefore(person.chat, before, MESSAGES_AT_ONCE + 1);
    return { messages: rows.slice(-MESSAGES_AT_ONCE).map(messageOf), more: rows.length > MESSAGES_AT_ONCE };
  };

  const knownSecret = (secret: string | undefined) =>
    secret !== undefined && people.known(secret) ? secret : undefined;

  const hello: Door = async (request, response) => {
    const { as: invited } = understood(helloShape, await readPageJson(request));
    const secret = knownSecret(invited) ?? secretOf(request) ?? newSecret();
    const { chat, name } = people.enter(secret);
    const commands = commandsOf(log);
    const change = log.lastChange();
    const recent = history({ chat, name }, Number.MAX_SAFE_INTEGER);
    response.setHeader("set-cookie", secretCookie(secret));
    sendJson(response, 200, { title: title(), chat, name, commands, change, ...recent });
  };

  const giveFile = async (request: IncomingMessage, response: ServerResponse, id: string) => {
    const file = shelf.get(id);
    if (!file) throw new Refusal(404, "That file is not here.");
    const shown = isShown(file.mime);
    await sendFile(request, response, shelf.locate(file), {
      "content-type": shown ? file.mime : "application/octet-stream",
      "content-disposition": shown ? "inline" : attachment(file.name),
      "content-security-policy": "default-src 'none'; sandbox",
      "cache-control": "private, max-age=31536000, immutable",
    });
  };

  const ask: Door = async (request, response, url) => {
    const person = personBehind(request, people);
    const [, , what = "", id = ""] = url.pathname.split("/");
    switch (what) {
      case "events":
        openEvents({ request, response, url, chat: person.chat, log, hub, title: title() });
        break;
      case "file":
        await giveFile(request, response, id);
        break;
      case "history": {
        const { before } = understood(historyAsked, Object.fromEntries(url.searchParams));
        sendJson(response, 200, history(person, before));
        break;
      }
      default:
        throw notHere();
    }
  };

  const act: Door = async (request, response, url) => {
    const run = acts.get(url.pathname.slice("/page/".length));
    if (!run) throw notHere();
    sendJson(response, 200, await run(request, personBehind(request, people), url));
  };

  const givePage: Door = async (_request, response, url) => {
    const page = pages.get(url.pathname);
    if (!page) throw notHere();
    await new Promise<void>((done) => response.writeHead(200, page.headers).end(page.bytes, done));
  };

  const doorFor = (request: IncomingMessage, url: URL): Door => {
    if (!url.pathname.startsWith("/page/")) return givePage;
    refuseOtherSites(request);
    if (request.method !== "POST") return ask;
    return url.pathname === "/page/hello" ? hello : act;
  };

  return async (request, response, url) => {
    try {
      await doorFor(request, url)(request, response, url);
    } catch (error) {
      if (!(error instanceof Refusal || isHangup(error))) onFault(error);
      const refusal =
        error instanceof Refusal ? error : new Refusal(500, "Something went wrong here. Please try again.");
      sendJson(response, refusal.code, { error: refusal.message });
    }
  };
};
