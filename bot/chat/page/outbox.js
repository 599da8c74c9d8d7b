// @ts-check
import { deliver, Refused } from "./server-calls.js";

/** @typedef {import("./types.js").Waiting} Waiting */

/**
 * Sends what the person does, one after the other, and keeps what cannot be sent yet.
 * @param {import("./drawer.js").Drawer} drawer
 * @param {{
 *   changed: (waiting: readonly Waiting[]) => void,
 *   sent: (waiting: Waiting, answer: { message?: import("./types.js").Message }) => void,
 *   tapRefused: (words: string) => void,
 *   stranger: () => Promise<unknown>,
 * }} tell `stranger` is called when the server does not know this browser any more
 */
export const createOutbox = async (drawer, tell) => {
  /** @type {Waiting[]} */
  let waiting = await drawer.all();
  /** @type {Promise<void> | undefined} */
  let running;
  let lastAt = waiting.at(-1)?.at ?? 0;

  /** @param {string} key */
  const drop = async (key) => {
    waiting = waiting.filter((each) => each.key !== key);
    tell.changed(waiting);
    await drawer.remove(key);
  };

  /** @param {Waiting} one @param {string | undefined} refused */
  const mark = async (one, refused) => {
    const { refused: _, ...rest } = one;
    const marked = /** @type {Waiting} */ (refused === undefined ? rest : { ...rest, refused });
    waiting = waiting.map((each) => (each.key === one.key ? marked : each));
    await drawer.put(marked);
    tell.changed(waiting);
  };

  /** @param {Waiting} one @param {string} words */
  const refuseTap = async (one, words) => {
    tell.tapRefused(words);
    await drop(one.key);
  };

  /** @param {Waiting} one @param {boolean} known whether the server has just learned who we are */
  const attempt = async (one, known = false) => {
    try {
      const answer = await deliver(one);
      tell.sent(one, answer);
      await drop(one.key);
    } catch (problem) {
      if (!(problem instanceof Refused) || problem.status >= 500) throw problem;
      if (one.act === "tap" && problem.status !== 401) return refuseTap(one, problem.message);
      if (problem.status !== 401 || known) return mark(one, problem.message);
      await tell.stranger();
      await attempt(one, true);
    }
  };

  const run = async () => {
    for (;;) {
      const next = waiting.find((each) => each.refused === undefined);
      if (!next) return;
      await attempt(next);
    }
  };

  /** Tries to send what waits; resolves when nothing more can be done now. */
  const flush = () => {
    running ??= run()
      .catch(() => undefined)
      .finally(() => {
        running = undefined;
      });
    return running;
  };

  /** @param {Waiting} one */
  const add = async (one) => {
    waiting = [...waiting, one];
    tell.changed(waiting);
    await drawer.put(one);
    void flush();
  };

  /**
   * Takes something to be sent. It is kept before this resolves.
   * @param {any} act what to do, as in Waiting, without its key and time
   */
  const push = (act) => {
    lastAt = Math.max(Date.now(), lastAt + 1);
    return add({ ...act, key: newKey(), at: lastAt });
  };

  /** @param {string} key */
  const again = async (key) => {
    const one = waiting.find((each) => each.key === key);
    if (!one) return;
    await mark(one, undefined);
    void flush();
  };

  tell.changed(waiting);
  return { push, flush, again, drop, idle: () => running ?? Promise.resolve() };
};

/** A name that nobody else gives; also where the page has no secure context. */
const newKey = () =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
