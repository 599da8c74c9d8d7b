// @ts-check
import { byId } from "./dom.js";

const NOTICE_MS = 8000;
const ACTION_MS = 6000;

/** @type {Readonly<Record<string, string>>} */
const DOING = {
  typing: "is writing",
  upload_photo: "is drawing a picture",
  upload_document: "is preparing a file",
  record_voice: "is listening",
  upload_voice: "is preparing a recording",
};

/** @param {HTMLElement} element @param {string} words */
const say = (element, words) => {
  if (element.textContent !== words) element.textContent = words;
};

/** The small signs around the conversation: who is there, what is happening. */
export const createSigns = () => {
  const state = byId("state", HTMLElement);
  const away = byId("away", HTMLElement);
  const notice = byId("notice", HTMLElement);
  const typing = byId("typing", HTMLElement);
  let title = "Holdfast";
  let unread = 0;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let noticeEnds;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let typingEnds;

  const showTitle = () => {
    document.title = unread > 0 ? `(${unread}) ${title}` : title;
    say(byId("title", HTMLElement), title);
  };

  document.addEventListener("visibilitychange", () => {
    if (document.hidden) return;
    unread = 0;
    showTitle();
  });

  return {
    /** @param {string} name */
    named: (name) => {
      title = name;
      showTitle();
    },
    /** @param {boolean} is */
    connected: (is) => {
      state.dataset["state"] = is ? "here" : "away";
      say(state, is ? "Ready" : "Not running");
      away.hidden = is;
    },
    /** @param {string} words */
    notice: (words) => {
      clearTimeout(noticeEnds);
      notice.hidden = false;
      say(notice, words);
      noticeEnds = setTimeout(() => {
        notice.hidden = true;
      }, NOTICE_MS);
    },
    /** @param {string} action */
    doing: (action) => {
      clearTimeout(typingEnds);
      typing.hidden = false;
      say(byId("typing-words", HTMLElement), `Holdfast ${DOING[action] ?? "is at it"}`);
      typingEnds = setTimeout(() => {
        typing.hidden = true;
      }, ACTION_MS);
    },
    done: () => {
      clearTimeout(typingEnds);
      typing.hidden = true;
    },
    unseen: () => {
      if (!document.hidden) return;
      unread += 1;
      showTitle();
    },
  };
};
