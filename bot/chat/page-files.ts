import { readdirSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";

/** What a browser needs to show the page, and nothing from elsewhere. */
const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "connect-src 'self'",
  "form-action 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join("; ");

export type PageFile = { readonly bytes: Buffer; readonly headers: Readonly<Record<string, string>> };

const FOLDER = join(import.meta.dirname, "page");

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".css": "text/css",
  ".js": "text/javascript",
  ".svg": "image/svg+xml",
};

const load = (name: string): PageFile => {
  const bytes = readFileSync(join(FOLDER, name));
  return {
    bytes,
    headers: {
      "content-type": `${TYPES[extname(name)] ?? "text/plain"}; charset=utf-8`,
      "content-length": String(bytes.byteLength),
      "cache-control": "no-cache",
      "content-security-policy": CONTENT_SECURITY_POLICY,
      "permissions-policy": "microphone=(self), camera=(self), geolocation=()",
    },
  };
};

/** The page's files by the path that asks for them. */
export const loadPage = (): ReadonlyMap<string, PageFile> => {
  const names = readdirSync(FOLDER).filter((name) => extname(name) in TYPES);
  const files = names.map((name) => [`/${name}`, load(name)] as const);
  return new Map([...files, ["/", load("index.html")]]);
};
