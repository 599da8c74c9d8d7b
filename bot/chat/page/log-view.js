// @ts-check
import { isMine, messageView } from "./message-view.js";
import { dayKey, dayName } from "./times.js";

/** @typedef {import("./types.js").Message} Message */
/** @typedef {ReturnType<typeof messageView> & { message: Message }} Shown */

const TAP_REST_MS = 4000;

/**
 * The messages on the page, in their order.
 * @param {HTMLOListElement} list
 * @param {import("./message-view.js").Deeds} deeds
 */
export const createLogView = (list, deeds) => {
  /** @type {Map<number, Shown>} */
  const shown = new Map();
  const order = () => [...shown.keys()].sort((a, b) => a - b);

  /** @param {Shown | undefined} one @param {Shown | undefined} previous */
  const nameDay = (one, previous) => {
    if (!one) return;
    const begins = !previous || dayKey(previous.message.date) !== dayKey(one.message.date);
    one.day.hidden = !begins;
    one.day.textContent = begins ? dayName(one.message.date, new Date()) : "";
  };

  /** @param {number} id */
  const nameDaysAround = (id) => {
    const ids = order();
    const at = ids.findIndex((each) => each >= id);
    for (const place of at === -1 ? [] : [at, at + 1]) {
      nameDay(shown.get(ids[place] ?? 0), shown.get(ids[place - 1] ?? 0));
    }
  };

  /** @param {Shown} old @param {Shown} fresh */
  const swap = (old, fresh) => {
    const hadFocus = old.entry.contains(document.activeElement);
    old.entry.replaceWith(fresh.entry);
    if (!hadFocus) return;
    const stub = fresh.entry.querySelector("button.stub");
    (stub instanceof HTMLElement ? stub : fresh.card).focus({ preventScroll: true });
  };

  /** @param {number} id */
  const remove = (id) => {
    shown.get(id)?.entry.remove();
    if (shown.delete(id)) nameDaysAround(id);
  };

  /** Shows a message as it now is; true when it was not there before. @param {Message} message */
  const put = (message) => {
    const id = message.message_id;
    const old = shown.get(id);
    const fresh = { ...messageView(message, deeds), message };
    const next = order().find((each) => each > id);
    shown.set(id, fresh);
    if (old) swap(old, fresh);
    else list.insertBefore(fresh.entry, next === undefined ? null : (shown.get(next)?.entry ?? null));
    nameDaysAround(id);
    return !old;
  };

  /** Leads to a message; false when it is not on the page. @param {number} id */
  const lead = (id) => {
    const one = shown.get(id);
    one?.entry.scrollIntoView({ block: "center" });
    one?.card.focus({ preventScroll: true });
    return one !== undefined;
  };

  /** Lets the buttons of a message rest after one was pressed. @param {number} id */
  const rest = (id) => {
    const pressed = /** @type {NodeListOf<HTMLButtonElement>} */ (
      shown.get(id)?.entry.querySelectorAll(".stub") ?? []
    );
    for (const stub of pressed) stub.setAttribute("aria-disabled", "true");
    setTimeout(() => {
      for (const stub of pressed) stub.removeAttribute("aria-disabled");
    }, TAP_REST_MS);
  };

  const lastOwn = () =>
    [...shown.values()]
      .map(({ message }) => message)
      .filter((message) => isMine(message) && message.text !== undefined)
      .sort((a, b) => b.message_id - a.message_id)[0];

  return { put, remove, lead, rest, lastOwn, first: () => order()[0], size: () => shown.size };
};
