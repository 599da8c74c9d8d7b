import type { IncomingMessage, ServerResponse } from "node:http";
import { isLoopback, sameSecret } from "./http/guard.ts";
import { readParams } from "./http/params.ts";
import { isHangup, sendFile, sendJson } from "./http/respond.ts";
import { methodNamed } from "./methods/index.ts";
import type { Office } from "./methods/method.ts";
import { Refusal } from "./refusal.ts";

export type Door = (request: IncomingMessage, response: ServerResponse, url: URL) => Promise<void>;

const notFound = () => new Refusal(404, "Not Found");

const gone = (response: ServerResponse): AbortSignal => {
  const controller = new AbortController();
  response.on("close", () => controller.abort());
  return controller.signal;
};

const fail = (response: ServerResponse, error: unknown): void => {
  const refusal = error instanceof Refusal ? error : new Refusal(500, "Internal Server Error");
  sendJson(response, refusal.code, { ok: false, error_code: refusal.code, description: refusal.message });
};

type Doorway = {
  readonly token: string;
  readonly office: Office;
  /** Told about an error that is nobody's refusal. */
  readonly onFault: (error: unknown) => void;
};

/** The way in for the bot: the Bot API's methods, and the files that `getFile` names. This machine only. */
export const createBotDoor = ({ token, office, onFault }: Doorway): Door => {
  const checkCaller = (request: IncomingMessage, given: string) => {
    const fromHere = isLoopback(request.socket.remoteAddress ?? "");
    if (!fromHere || request.headers.origin !== undefined) throw new Refusal(403, "Forbidden");
    if (!sameSecret(given, token)) throw new Refusal(401, "Unauthorized");
  };

  const callMethod = async (request: IncomingMessage, response: ServerResponse, url: URL, name: string) => {
    const method = methodNamed(name);
    if (!method) throw notFound();
    const signal = gone(response);
    const call = { ...(await readParams(request, url)), signal };
    sendJson(response, 200, { ok: true, result: await method(office, call) });
  };

  const giveFile = async (request: IncomingMessage, response: ServerResponse, path: string) => {
    const file = office.shelf.byPath(path);
    if (!file) throw notFound();
    await sendFile(request, response, office.shelf.locate(file), {
      "content-type": "application/octet-stream",
    });
  };

  return async (request, response, url) => {
    try {
      const [, files, given = "", path = ""] = /^(\/file)?\/bot([^/]*)\/(.+)$/.exec(url.pathname) ?? [];
      checkCaller(request, decodeURIComponent(given));
      await (files === undefined
        ? callMethod(request, response, url, path)
        : giveFile(request, response, path));
    } catch (error) {
      if (!(error instanceof Refusal || isHangup(error))) onFault(error);
      fail(response, error);
    }
  };
};
