// @ts-check
import { byId } from "./dom.js";
import { gist } from "./words.js";

const TAG = "holdfast";

const possible = () => "Notification" in window && window.isSecureContext;

/**
 * Shows new messages on the device's screen while the page is in the background, for those who ask for it.
 * @returns {(message: import("./types.js").Message) => void}
 */
export const createAlerts = () => {
  const ask = byId("alerts", HTMLButtonElement);
  const refresh = () => {
    ask.hidden = !possible() || Notification.permission !== "default";
  };
  ask.addEventListener("click", async () => {
    await Notification.requestPermission();
    refresh();
  });
  refresh();

  return async (message) => {
    if (!possible() || Notification.permission !== "granted" || !document.hidden) return;
    const about = { body: gist(message), tag: TAG, icon: "/mark.svg" };
    const keeper = await navigator.serviceWorker?.getRegistration();
    if (keeper) await keeper.showNotification(document.title, about);
    else new Notification(document.title, about);
  };
};
