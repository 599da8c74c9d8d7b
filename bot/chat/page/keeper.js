// @ts-check

/** Answers with what the program says now, or, while it is off, with the page as it was seen last. */
const worker = /** @type {any} */ (globalThis);

/** @param {Request} request */
const answer = async (request) => {
  const kept = await caches.open("holdfast-page");
  try {
    const fresh = await fetch(request);
    if (fresh.ok) await kept.put(request, fresh.clone());
    return fresh;
  } catch (problem) {
    const old = await kept.match(request, { ignoreSearch: true });
    if (old) return old;
    throw problem;
  }
};

worker.addEventListener("install", () => worker.skipWaiting());
worker.addEventListener("activate", (/** @type {any} */ event) => event.waitUntil(worker.clients.claim()));
worker.addEventListener("fetch", (/** @type {any} */ event) => {
  const { origin, pathname } = new URL(event.request.url);
  const isPage = origin === worker.location.origin && !/^\/(page\/|bot|file\/)/.test(pathname);
  if (event.request.method === "GET" && isPage) event.respondWith(answer(event.request));
});
