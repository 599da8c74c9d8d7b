import { createHash, timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";
import { isIP } from "node:net";
import { hostname } from "node:os";
import { Refusal } from "../refusal.ts";

const LOOPBACK = new Set(["127.0.0.1", "localhost", "[::1]"]);

/** True for an address that only this machine can have. */
export const isLoopback = (address: string): boolean =>
  address === "localhost" || address === "::1" || /^(::ffff:)?127\./.test(address);

const nameOf = (hostHeader: string): string => hostHeader.replace(/:\d{1,5}$/, "").toLowerCase();

const isAddress = (name: string) => isIP(name.replace(/^\[|\]$/g, "")) !== 0;

/**
 * Tells whether a Host header names this machine. Elsewhere than on loopback any plain address and the machine's
 * own names count: a web page elsewhere can make a name of its own point here, but not an address.
 */
export const knowsHost = (boundTo: string) => {
  const open = !isLoopback(boundTo);
  const own = hostname().toLowerCase();
  const names = new Set([...LOOPBACK, ...(open ? [own, `${own}.local`, boundTo.toLowerCase()] : [])]);
  return (hostHeader: string | undefined): boolean => {
    const name = nameOf(hostHeader ?? "");
    return names.has(name) || (open && isAddress(name));
  };
};

/** Refuses a request that another site's page made the browser send. */
export const refuseOtherSites = (request: IncomingMessage): void => {
  const { origin, host = "" } = request.headers;
  const site = request.headers["sec-fetch-site"];
  const sameSite = site === undefined || site === "same-origin" || site === "none";
  const sameOrigin = origin === undefined || origin === `http://${host}`;
  if (!sameSite || !sameOrigin) throw new Refusal(403, "This chat only listens to its own page.");
};

const digest = (text: string) => createHash("sha256").update(text).digest();

/** Compares two secrets in a time that tells nothing about where they differ. */
export const sameSecret = (a: string, b: string): boolean => timingSafeEqual(digest(a), digest(b));
