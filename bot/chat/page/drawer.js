// @ts-check

const STORE = "waiting";

/** @template T @param {IDBRequest<T>} request @returns {Promise<T>} */
const done = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const openDatabase = () => {
  const request = indexedDB.open("holdfast-chat", 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: "key" });
  return done(request);
};

/**
 * Where the page keeps what it could not send yet, so that it outlives the page.
 * @typedef {{
 *   all(): Promise<import("./types.js").Waiting[]>,
 *   put(waiting: import("./types.js").Waiting): Promise<void>,
 *   remove(key: string): Promise<void>,
 * }} Drawer
 */

/** @returns {Drawer} */
const inMemory = () => {
  /** @type {Map<string, import("./types.js").Waiting>} */
  const kept = new Map();
  return {
    all: async () => [...kept.values()],
    put: async (waiting) => void kept.set(waiting.key, waiting),
    remove: async (key) => void kept.delete(key),
  };
};

/** @param {IDBDatabase} database @returns {Drawer} */
const inDatabase = (database) => {
  /** @param {IDBTransactionMode} mode */
  const store = (mode) => database.transaction(STORE, mode).objectStore(STORE);
  return {
    all: async () => (await done(store("readonly").getAll())).sort((a, b) => a.at - b.at),
    put: async (waiting) => void (await done(store("readwrite").put(waiting))),
    remove: async (key) => void (await done(store("readwrite").delete(key))),
  };
};

/**
 * Opens the drawer; where the browser keeps nothing for us, it lasts as long as the page.
 * @returns {Promise<Drawer>}
 */
export const openDrawer = () => openDatabase().then(inDatabase, inMemory);
