// @ts-check
import { icon, make } from "./dom.js";
import { fileAddress } from "./server-calls.js";
import { fileSize, span } from "./times.js";

/** @typedef {import("./types.js").FileOfMessage} FileOfMessage */

/** @param {HTMLElement} media @param {string} words what to show when the file is gone */
const orGone = (media, words) => {
  media.addEventListener("error", () => media.replaceWith(make("p", { class: "gone" }, words)));
  return media;
};

/** @param {FileOfMessage} photo @param {string} about */
const picture = (photo, about) => {
  const image = make("img", {
    src: fileAddress(photo.file_id),
    alt: about,
    width: photo.width ? String(photo.width) : undefined,
    height: photo.height ? String(photo.height) : undefined,
    decoding: "async",
  });
  const link = make("a", {
    class: "picture",
    href: fileAddress(photo.file_id),
    target: "_blank",
    rel: "noopener",
  });
  link.append(orGone(image, "This picture is no longer here."));
  return link;
};

/** @param {FileOfMessage} sound @param {string} name */
const recording = (sound, name) => {
  const player = make("audio", {
    controls: "",
    preload: "metadata",
    src: fileAddress(sound.file_id),
    "aria-label": name,
  });
  const length = sound.duration ? `${name}, ${span(sound.duration)}` : name;
  return make(
    "div",
    { class: "sound" },
    make("p", { class: "aside" }, length),
    orGone(player, "This recording cannot be played here."),
  );
};

/** @param {FileOfMessage} file */
const paper = (file) => {
  const name = file.file_name ?? "file";
  const size = file.file_size === undefined ? "" : fileSize(file.file_size);
  const label = make(
    "span",
    {},
    make("span", { class: "file-name", dir: "auto" }, name),
    make("span", { class: "aside" }, size),
  );
  return make("a", { class: "paper", href: fileAddress(file.file_id), download: name }, icon("sheet"), label);
};

/**
 * What comes with a message beside its words.
 * @param {import("./types.js").Message} message
 * @returns {HTMLElement[]}
 */
export const attachmentsOf = (message) => {
  const photo = message.photo?.at(-1);
  return [
    ...(photo ? [picture(photo, message.caption ?? `Picture from ${message.from.first_name}`)] : []),
    ...(message.voice ? [recording(message.voice, "Voice note")] : []),
    ...(message.audio ? [recording(message.audio, message.audio.file_name ?? "Recording")] : []),
    ...(message.document ? [paper(message.document)] : []),
  ];
};
