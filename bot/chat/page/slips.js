// @ts-check
import { button, byId, make } from "./dom.js";

/**
 * The list of commands.
 * @param {(command: string) => void} choose
 */
export const createCommandSlip = (choose) => {
  const slip = byId("commands", HTMLDialogElement);
  const list = byId("command-list", HTMLUListElement);
  const opener = byId("open-commands", HTMLButtonElement);
  opener.addEventListener("click", () => slip.showModal());

  /** @param {readonly import("./types.js").Command[]} commands */
  return (commands) => {
    opener.hidden = commands.length === 0;
    list.replaceChildren(
      ...commands.map(({ command, description }) => {
        const press = () => {
          slip.close();
          choose(`/${command}`);
        };
        return make(
          "li",
          {},
          button(
            { class: "command" },
            press,
            make("strong", {}, `/${command}`),
            make("span", {}, description),
          ),
        );
      }),
    );
  };
};

/**
 * What the log calls the person.
 * @param {(name: string) => void} save
 */
export const createYouSlip = (save) => {
  const slip = byId("you", HTMLDialogElement);
  const name = byId("your-name", HTMLInputElement);
  byId("open-you", HTMLButtonElement).addEventListener("click", () => slip.showModal());
  name.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    slip.close("save");
  });
  slip.addEventListener("close", () => {
    if (slip.returnValue === "save" && name.value.trim() !== "") save(name.value);
    slip.returnValue = "";
  });

  /** @param {string} known */
  return (known) => {
    name.value = known;
  };
};
