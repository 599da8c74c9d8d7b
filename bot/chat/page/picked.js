// @ts-check
import { button, byId, icon, make } from "./dom.js";
import { fileSize } from "./times.js";

const MAX_BYTES = 20 * 1024 * 1024;
const PICTURES = new Set(["image/png", "image/jpeg", "image/webp", "image/gif"]);

/** @param {File} file @returns {import("./types.js").FileKind} */
const kindOf = ({ type }) => {
  if (PICTURES.has(type)) return "photo";
  return type.startsWith("audio/") ? "audio" : "document";
};

/**
 * The files that were picked and go with the next message.
 * @param {{ notice: (words: string) => void, picked: () => void }} tell
 */
export const createPicked = (tell) => {
  const list = byId("picked", HTMLUListElement);
  const input = byId("files", HTMLInputElement);
  /** @type {File[]} */
  let files = [];

  const show = () => {
    list.hidden = files.length === 0;
    list.replaceChildren(
      ...files.map((file) => {
        const label = { class: "icon", "aria-label": `Leave out ${file.name}` };
        const leave = button(
          label,
          () => {
            files = files.filter((each) => each !== file);
            show();
            tell.picked();
          },
          icon("close"),
        );
        return make(
          "li",
          {},
          make("span", { class: "file-name", dir: "auto" }, file.name),
          make("span", { class: "aside" }, fileSize(file.size)),
          leave,
        );
      }),
    );
  };

  /** @param {readonly File[]} more */
  const add = (more) => {
    for (const file of more) {
      if (file.size > MAX_BYTES) tell.notice(`${file.name} is larger than 20 MB and cannot be sent.`);
      else if (file.size === 0) tell.notice(`${file.name} is empty.`);
      else files = [...files, file];
    }
    show();
    if (files.length > 0) tell.picked();
  };

  byId("attach", HTMLButtonElement).addEventListener("click", () => input.click());
  input.addEventListener("change", () => {
    add([...(input.files ?? [])]);
    input.value = "";
  });
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    add([...(event.dataTransfer?.files ?? [])]);
  });

  /** Gives the files away, as things to be sent; the caption goes with the first. @param {string} caption */
  const take = (caption) => {
    const taken = files.map((file, place) => ({
      act: /** @type {const} */ ("file"),
      kind: kindOf(file),
      name: file.name,
      bytes: file,
      ...(place === 0 && caption !== "" && { caption }),
    }));
    files = [];
    show();
    return taken;
  };

  return { add, take, count: () => files.length };
};
