// @ts-check

/** The server said no, in words for people. */
export class Refused extends Error {
  /** @param {number} status @param {string} words */
  constructor(status, words) {
    super(words);
    this.status = status;
  }
}

/**
 * @param {Response} response
 * @returns {Promise<any>}
 */
const answerOf = async (response) => {
  const answer = await response.json().catch(() => ({}));
  if (response.ok) return answer;
  throw new Refused(response.status, answer.error ?? "That did not work.");
};

/**
 * @param {string} path
 * @param {object} body
 */
const post = async (path, body) =>
  answerOf(
    await fetch(path, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
    }),
  );

/**
 * Says who we are; the server remembers this browser by a cookie that scripts cannot read.
 * @param {string} [as] the secret of somebody who goes on in this browser
 * @returns {Promise<import("./types.js").Welcome>}
 */
export const hello = (as) => post("/page/hello", as === undefined ? {} : { as });

/**
 * @param {number} before
 * @returns {Promise<{ messages: import("./types.js").Message[], more: boolean }>}
 */
export const history = async (before) => answerOf(await fetch(`/page/history?before=${before}`));

/** @param {string} name */
export const rename = (name) => post("/page/name", { name });

/** @param {string} fileId */
export const fileAddress = (fileId) => `/page/file/${encodeURIComponent(fileId)}`;

/** @param {Extract<import("./types.js").Waiting, { act: "file" }>} file */
const upload = async ({ key, kind, name, bytes, caption, durationSeconds, replyTo }) => {
  const about = new URLSearchParams({ key, kind, name });
  if (caption !== undefined) about.set("caption", caption);
  if (durationSeconds !== undefined) about.set("durationSeconds", String(durationSeconds));
  if (replyTo !== undefined) about.set("replyTo", String(replyTo));
  const headers = { "content-type": bytes.type || "application/octet-stream" };
  return answerOf(await fetch(`/page/file?${about}`, { method: "POST", headers, body: bytes }));
};

/**
 * Sends one waiting thing. Throws Refused when the server will not have it, another error when it is not there.
 * @param {import("./types.js").Waiting} waiting
 * @returns {Promise<{ message?: import("./types.js").Message }>}
 */
export const deliver = (waiting) => {
  if (waiting.act === "file") return upload(waiting);
  const { act, at: _at, refused: _refused, ...body } = waiting;
  return post(`/page/${act}`, body);
};
