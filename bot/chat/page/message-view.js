// @ts-check
import { attachmentsOf } from "./attachments.js";
import { button, icon, make } from "./dom.js";
import { clockTime, fullTime } from "./times.js";
import { gist, wordsOf } from "./words.js";

/** @typedef {import("./types.js").Message} Message */
/**
 * @typedef {{
 *   tap: (message: Message, data: string) => void,
 *   reply: (message: Message) => void,
 *   change: (message: Message) => void,
 *   copy: (message: Message) => void,
 *   show: (message: number) => void,
 * }} Deeds
 */

/** @param {Message} message */
export const isMine = (message) => !message.from.is_bot;

/** @param {Message} message */
const byline = (message) => {
  const moment = new Date(message.date * 1000).toISOString();
  const time = make("time", { datetime: moment, title: fullTime(message.date) }, clockTime(message.date));
  const who = make("span", { class: "who", dir: "auto" }, isMine(message) ? "You" : message.from.first_name);
  const edited = isMine(message) && message.edit_date !== undefined;
  return make("p", { class: "by" }, who, " ", time, ...(edited ? [" ", make("span", {}, "changed")] : []));
};

/** @param {Message} replied @param {Deeds} deeds */
const quote = (replied, deeds) => {
  const who = isMine(replied) ? "You" : replied.from.first_name;
  return button(
    { class: "quote" },
    () => deeds.show(replied.message_id),
    make("span", { class: "unseen" }, "In reply to "),
    make("span", { class: "who" }, who),
    " ",
    make("span", { class: "quote-words", dir: "auto" }, gist(replied)),
  );
};

/** @param {Message} message @param {Deeds} deeds */
const stubs = (message, deeds) => {
  const rows = (message.reply_markup?.inline_keyboard ?? []).map((row) =>
    make(
      "div",
      { class: "stub-row" },
      ...row.map(({ text, callback_data }) =>
        button({ class: "stub", dir: "auto" }, () => deeds.tap(message, callback_data), text),
      ),
    ),
  );
  return rows.length === 0
    ? []
    : [make("div", { class: "stubs", role: "group", "aria-label": "Choices" }, ...rows)];
};

/** @param {Message} message @param {Deeds} deeds */
const tools = (message, deeds) => {
  const hasWords = (message.text ?? message.caption) !== undefined;
  const choices = make(
    "div",
    { class: "choices", hidden: "" },
    button({ class: "plain" }, () => deeds.reply(message), "Reply"),
    ...(hasWords ? [button({ class: "plain" }, () => deeds.copy(message), "Copy")] : []),
    ...(isMine(message) && hasWords
      ? [button({ class: "plain" }, () => deeds.change(message), "Change")]
      : []),
  );
  const more = button(
    { class: "icon more", "aria-label": "More for this message", "aria-expanded": "false" },
    () => {
      choices.hidden = !choices.hidden;
      more.setAttribute("aria-expanded", String(!choices.hidden));
      if (!choices.hidden) choices.querySelector("button")?.focus({ preventScroll: false });
    },
    icon("more"),
  );
  choices.addEventListener("click", () => {
    choices.hidden = true;
    more.setAttribute("aria-expanded", "false");
  });
  choices.addEventListener("keydown", ({ key }) => {
    if (key !== "Escape") return;
    choices.hidden = true;
    more.setAttribute("aria-expanded", "false");
    more.focus();
  });
  return { more, choices };
};

/**
 * One message of the conversation.
 * @param {Message} message
 * @param {Deeds} deeds
 */
export const messageView = (message, deeds) => {
  const text = message.text ?? message.caption;
  const entities = message.entities ?? message.caption_entities;
  const { more, choices } = tools(message, deeds);
  const card = make(
    "article",
    { class: "card", tabindex: "-1" },
    make("div", { class: "card-head" }, byline(message), more),
    ...(message.reply_to_message ? [quote(message.reply_to_message, deeds)] : []),
    ...attachmentsOf(message),
    ...(text === undefined ? [] : [wordsOf(text, entities)]),
    choices,
    ...stubs(message, deeds),
  );
  const day = make("h2", { class: "day", hidden: "" });
  const entry = make(
    "li",
    { class: `entry ${isMine(message) ? "mine" : "theirs"}`, id: `m-${message.message_id}` },
    day,
    card,
  );
  return { entry, card, day };
};
