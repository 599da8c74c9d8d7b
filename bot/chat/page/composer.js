// @ts-check
import { byId } from "./dom.js";
import { gist } from "./words.js";

/** @typedef {import("./types.js").Message} Message */
/** @typedef {{ deed: "new" } | { deed: "reply", message: Message } | { deed: "change", message: Message }} About */

const DRAFT = "holdfast-draft";
const TALLEST_PX = 220;

/** @param {string} [text] @returns {string} what was kept */
const draft = (text) => {
  try {
    if (text !== undefined) localStorage.setItem(DRAFT, text);
    return localStorage.getItem(DRAFT) ?? "";
  } catch {
    return "";
  }
};

/**
 * The box in which words are written.
 * @param {{
 *   send: (text: string, about: About) => boolean,
 *   lastOwn: () => Message | undefined,
 *   pasted: (files: File[]) => void,
 * }} tell `send` says whether the words were taken
 */
export const createComposer = (tell) => {
  const form = byId("composer", HTMLFormElement);
  const words = byId("words", HTMLTextAreaElement);
  const strip = byId("about", HTMLElement);
  /** @type {About} */
  let about = { deed: "new" };
  let setAside = "";

  const grow = () => {
    words.style.height = "auto";
    words.style.height = `${Math.min(words.scrollHeight, TALLEST_PX)}px`;
  };

  /** @param {string} text */
  const write = (text) => {
    words.value = text;
    grow();
  };

  const showAbout = () => {
    strip.hidden = about.deed === "new";
    if (about.deed === "new") return;
    byId("about-deed", HTMLElement).textContent = about.deed === "reply" ? "Reply to" : "Change";
    byId("about-words", HTMLElement).textContent = gist(about.message);
  };

  const begin = () => {
    if (about.deed === "change") write(setAside);
    about = { deed: "new" };
    showAbout();
  };

  /** @param {Message} message */
  const reply = (message) => {
    begin();
    about = { deed: "reply", message };
    showAbout();
    words.focus();
  };

  /** @param {Message} message */
  const change = (message) => {
    begin();
    setAside = words.value;
    about = { deed: "change", message };
    showAbout();
    write(message.text ?? message.caption ?? "");
    words.focus();
  };

  const submit = () => {
    if (!tell.send(words.value, about)) return;
    if (about.deed !== "change") {
      write("");
      draft("");
    }
    begin();
    words.focus();
  };

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    submit();
  });
  words.addEventListener("input", () => {
    grow();
    if (about.deed !== "change") draft(words.value);
  });
  words.addEventListener("keydown", (event) => {
    if (event.isComposing) return;
    if (event.key === "Enter" && !event.shiftKey) {
      event.preventDefault();
      submit();
    } else if (event.key === "Escape") begin();
    else if (event.key === "ArrowUp" && words.value === "") {
      const last = tell.lastOwn();
      if (last) {
        event.preventDefault();
        change(last);
      }
    }
  });
  words.addEventListener("paste", ({ clipboardData }) => {
    const files = [...(clipboardData?.files ?? [])];
    if (files.length > 0) tell.pasted(files);
  });
  byId("about-cancel", HTMLButtonElement).addEventListener("click", () => {
    begin();
    words.focus();
  });

  write(draft());
  return { reply, change, focus: () => words.focus() };
};
