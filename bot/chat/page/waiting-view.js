// @ts-check
import { button, make } from "./dom.js";
import { fileSize } from "./times.js";
import { wordsOf } from "./words.js";

/** @typedef {import("./types.js").Waiting} Waiting */

/** @param {Waiting} waiting */
const contents = (waiting) => {
  if (waiting.act === "tap") return [];
  if (waiting.act !== "file") return [wordsOf(waiting.text)];
  const file = make(
    "p",
    { class: "file-name", dir: "auto" },
    `${waiting.name}, ${fileSize(waiting.bytes.size)}`,
  );
  return waiting.caption === undefined ? [file] : [file, wordsOf(waiting.caption)];
};

/** @param {Waiting} waiting */
const status = ({ act, refused }) => {
  if (refused !== undefined) return refused;
  return act === "edit" ? "Change waits to be sent" : "Waits to be sent";
};

/**
 * Shows what waits to be sent, and what the server would not have.
 * @param {HTMLOListElement} list
 * @param {{ again: (key: string) => void, drop: (key: string) => void }} deeds
 */
export const createWaitingView = (list, deeds) => {
  /** @param {Waiting} waiting */
  const entry = (waiting) => {
    const choices =
      waiting.refused === undefined
        ? []
        : [
            make(
              "div",
              { class: "choices" },
              button({ class: "plain" }, () => deeds.again(waiting.key), "Try again"),
              button({ class: "plain" }, () => deeds.drop(waiting.key), "Throw away"),
            ),
          ];
    const state = make("p", { class: waiting.refused === undefined ? "by" : "by refused" }, status(waiting));
    return make(
      "li",
      { class: "entry mine waits" },
      make("article", { class: "card" }, state, ...contents(waiting), ...choices),
    );
  };

  /** @param {readonly Waiting[]} waiting */
  return (waiting) => list.replaceChildren(...waiting.filter(({ act }) => act !== "tap").map(entry));
};
