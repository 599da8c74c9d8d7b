import { readFileSync } from "node:fs";
import { join } from "node:path";

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

const TYPES = { html: "text/html", css: "text/css", js: "text/javascript", svg: "image/svg+xml" } as const;

const load = (name: string, type: keyof typeof TYPES): PageFile => {
  const bytes = readFileSync(join(import.meta.dirname, "page", name));
  return {
    bytes,
    headers: {
      "content-type": `${TYPES[type]}; charset=utf-8`,
      "content-length": String(bytes.byteLength),
      "cache-control": "no-cache",
      "content-security-policy": CONTENT_SECURITY_POLICY,
      "permissions-policy": "microphone=(self), camera=(self), geolocation=()",
    },
  };
};

const SCRIPTS = ["main.js"] as const;

/** The page's files by the path that asks for them. */
export const loadPage = (): ReadonlyMap<string, PageFile> =>
  new Map([
    ["/", load("index.html", "html")],
    ["/chat.css", load("chat.css", "css")],
    ["/mark.svg", load("mark.svg", "svg")],
    ...SCRIPTS.map((name) => [`/${name}`, load(name, "js")] as const),
  ]);
