import { createHash } from "node:crypto";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";

/** A server with the layout of the hub, for one model's files. */
export type HubServer = {
  readonly host: string;
  /** Paths asked for, with the range if any. */
  readonly asked: string[];
  /** Cuts the next answer for this path after so many bytes. */
  readonly cutNext: (path: string, bytes: number) => void;
  /** Sends other bytes than listed from now on, or the right ones again. */
  readonly spoil: (path: string | null) => void;
  readonly close: () => Promise<void>;
};

const sha256 = (bytes: Buffer): string => createHash("sha256").update(bytes).digest("hex");
const gitHash = (bytes: Buffer): string =>
  createHash("sha1").update(`blob ${bytes.length}\0`).update(bytes).digest("hex");

const listing = (files: ReadonlyMap<string, Buffer>): object[] =>
  Array.from(files, ([path, bytes]) => ({
    type: "file",
    path,
    size: bytes.length,
    oid: gitHash(bytes),
    ...(path.endsWith(".onnx") ? { lfs: { oid: sha256(bytes), size: bytes.length, pointerSize: 130 } } : {}),
  }));

const listen = (server: Server): Promise<string> =>
  new Promise((resolve) => {
    server.listen(0, "127.0.0.1", () =>
      resolve(`http://127.0.0.1:${(server.address() as AddressInfo).port}`),
    );
  });

export const startHubServer = async (
  repo: string,
  files: ReadonlyMap<string, Buffer>,
): Promise<HubServer> => {
  const asked: string[] = [];
  const cuts = new Map<string, number>();
  let spoiled: string | null = null;
  const server = createServer((request, response) => {
    const url = request.url ?? "";
    if (url.startsWith(`/api/models/${repo}/tree/main`)) {
      response.setHeader("content-type", "application/json");
      response.end(JSON.stringify(listing(files)));
      return;
    }
    const path = url.replace(`/${repo}/resolve/main/`, "");
    const bytes = files.get(path);
    asked.push(request.headers.range === undefined ? path : `${path} ${request.headers.range}`);
    if (bytes === undefined) {
      response.writeHead(404).end();
      return;
    }
    const from = Number(/^bytes=(\d+)-/.exec(request.headers.range ?? "")?.[1] ?? 0);
    const sent = (path === spoiled ? Buffer.alloc(bytes.length) : bytes).subarray(from);
    response.writeHead(from > 0 ? 206 : 200, { "content-length": sent.length });
    const cut = cuts.get(path);
    cuts.delete(path);
    if (cut === undefined) response.end(sent);
    else response.write(sent.subarray(0, cut), () => setTimeout(() => response.destroy(), 50));
  });
  const host = await listen(server);
  return {
    host,
    asked,
    cutNext: (path, bytes) => void cuts.set(path, bytes),
    spoil: (path) => {
      spoiled = path;
    },
    close: () => new Promise((resolve) => void server.close(() => resolve())),
  };
};
