// @ts-check
import { byId } from "./dom.js";
import { createLogView } from "./log-view.js";
import { isMine } from "./message-view.js";
import { createScroll } from "./scroll.js";
import { history } from "./server-calls.js";

/** @typedef {import("./types.js").Message} Message */

/**
 * The conversation on the page: its messages, what of it is in sight, and older ones on request.
 * @param {import("./message-view.js").Deeds} deeds
 * @param {{ unseen: (message: Message) => void }} tell `unseen` is called for each new message of the bot
 */
export const createConversation = (deeds, tell) => {
  const list = byId("log", HTMLOListElement);
  const live = byId("live", HTMLElement);
  const earlier = byId("earlier", HTMLButtonElement);
  const toNewest = byId("to-newest", HTMLButtonElement);
  const view = createLogView(list, deeds);
  let below = 0;

  const showBelow = () => {
    toNewest.hidden = below === 0 && !scroll.farFromEnd();
    byId("to-newest-words", HTMLElement).textContent = below === 0 ? "Newest" : `${below} new`;
  };
  const scroll = createScroll(byId("scroller", HTMLElement), byId("sheet", HTMLElement), (atEnd) => {
    if (atEnd) below = 0;
    showBelow();
  });

  const showEmpty = () => {
    byId("empty", HTMLElement).hidden = view.size() > 0;
  };

  /** @param {readonly Message[]} messages @param {boolean} more */
  const fill = (messages, more) => {
    live.setAttribute("aria-busy", "true");
    for (const message of messages) view.put(message);
    earlier.hidden = !more;
    showEmpty();
    requestAnimationFrame(() => live.setAttribute("aria-busy", "false"));
  };

  /** @param {Message} message */
  const put = (message) => {
    const isNew = view.put(message);
    showEmpty();
    if (!isNew) return;
    if (isMine(message)) scroll.toEnd();
    else {
      tell.unseen(message);
      if (!scroll.atEnd()) below += 1;
      showBelow();
    }
  };

  toNewest.addEventListener("click", scroll.toEnd);
  earlier.addEventListener("click", async () => {
    const first = view.first();
    if (first === undefined) return;
    const { messages, more } = await history(first);
    scroll.holdStill(() => fill(messages, more));
  });

  return {
    fill,
    put,
    remove: view.remove,
    lead: view.lead,
    rest: view.rest,
    lastOwn: view.lastOwn,
    toEnd: scroll.toEnd,
  };
};
