// @ts-check
import { make } from "./dom.js";

const LONG = 2400;

/** @type {Readonly<Record<string, keyof HTMLElementTagNameMap>>} */
const ELEMENT_OF = {
  bold: "strong",
  italic: "em",
  underline: "u",
  strikethrough: "s",
  code: "code",
  pre: "pre",
  blockquote: "blockquote",
};

/**
 * A text with its styled stretches as nodes. Of stretches that overlap, the first counts.
 * @param {string} text
 * @param {readonly import("./types.js").Entity[]} [entities]
 * @returns {(Node | string)[]}
 */
const styled = (text, entities = []) => {
  /** @type {(Node | string)[]} */
  const parts = [];
  let at = 0;
  for (const { type, offset, length } of entities.toSorted((a, b) => a.offset - b.offset)) {
    const tag = ELEMENT_OF[type];
    if (!tag || offset < at) continue;
    parts.push(text.slice(at, offset), make(tag, {}, text.slice(offset, offset + length)));
    at = offset + length;
  }
  return [...parts, text.slice(at)];
};

/**
 * What somebody wrote, shown as it is; a very long text is folded.
 * @param {string} text
 * @param {readonly import("./types.js").Entity[]} [entities]
 */
export const wordsOf = (text, entities) => {
  const words = make("div", { class: "words", dir: "auto" }, ...styled(text, entities));
  if (text.length <= LONG) return words;
  words.classList.add("folded");
  const unfold = make(
    "button",
    { type: "button", class: "plain unfold" },
    `Show all ${text.length.toLocaleString()} characters`,
  );
  unfold.addEventListener("click", () => {
    words.classList.remove("folded");
    unfold.remove();
  });
  return make("div", {}, words, unfold);
};

/**
 * The first words of a message, for a reply to it.
 * @param {import("./types.js").Message} message
 */
export const gist = (message) => {
  const text = message.text ?? message.caption;
  if (text !== undefined) return text.length > 140 ? `${text.slice(0, 140)} …` : text;
  if (message.photo) return "a photo";
  if (message.voice || message.audio) return "a recording";
  return message.document?.file_name ?? "a file";
};
