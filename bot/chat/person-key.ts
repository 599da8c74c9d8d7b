import { randomBytes } from "node:crypto";
import type { IncomingMessage } from "node:http";
import type { PersonRow } from "./chat-log.ts";
import type { People } from "./people.ts";
import { Refusal } from "./refusal.ts";

const TEN_YEARS_SECONDS = 315_360_000;

/** The secret by which a browser is known again; undefined when it brings none of ours. */
export const secretOf = (request: IncomingMessage): string | undefined =>
  /(?:^|;\s*)holdfast=([\w-]{32})(?:;|$)/.exec(request.headers.cookie ?? "")?.[1];

export const newSecret = (): string => randomBytes(24).toString("base64url");

/** No script can read it, and no other site's page can make the browser send it. */
export const secretCookie = (secret: string): string =>
  `holdfast=${secret}; HttpOnly; SameSite=Strict; Path=/page; Max-Age=${TEN_YEARS_SECONDS}`;

/** Who asks. Throws 401 for a stranger. */
export const personBehind = (request: IncomingMessage, people: People): PersonRow => {
  const secret = secretOf(request);
  const person = secret === undefined ? undefined : people.known(secret);
  if (!person) throw new Refusal(401, "This page has lost its place. Open it again.");
  return person;
};
