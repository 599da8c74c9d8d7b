// @ts-check

/**
 * Keeps the page itself in the browser, so that it opens, takes words and keeps them also while the program is off.
 * Browsers allow it on this machine and over https; elsewhere nothing happens.
 */
export const keepPage = async () => {
  if (!("serviceWorker" in navigator) || !("caches" in window)) return;
  const own = performance
    .getEntriesByType("resource")
    .map(({ name }) => new URL(name))
    .filter(({ origin, pathname }) => origin === location.origin && !pathname.startsWith("/page/"));
  try {
    const kept = await caches.open("holdfast-page");
    await kept.addAll(["/", ...new Set(own.map(({ pathname }) => pathname))]);
    await navigator.serviceWorker.register("/keeper.js");
  } catch {
    // The page works without it.
  }
};
