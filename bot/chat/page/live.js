// @ts-check

const FIRST_WAIT_MS = 500;
const LONGEST_WAIT_MS = 5000;

/**
 * Listens to the chat for as long as the page is open, and resumes after the last change it saw.
 * @param {{
 *   after: () => number,
 *   heard: (event: import("./types.js").ChatEvent) => void,
 *   connected: (is: boolean) => void,
 *   lost: () => Promise<void>,
 * }} to `lost` is called before each new try, and may reject to wait longer
 */
export const listen = ({ after, heard, connected, lost }) => {
  let wait = FIRST_WAIT_MS;

  const retry = () => {
    connected(false);
    setTimeout(() => void lost().then(open, retry), wait);
    wait = Math.min(wait * 2, LONGEST_WAIT_MS);
  };

  const open = () => {
    const source = new EventSource(`/page/events?after=${after()}`);
    source.addEventListener("open", () => {
      wait = FIRST_WAIT_MS;
      connected(true);
    });
    source.addEventListener("message", ({ data }) => heard(JSON.parse(data)));
    source.addEventListener("error", () => {
      source.close();
      retry();
    });
  };

  open();
};
