// @ts-check

/** So near the end that the newest message is meant to stay in sight. */
const NEAR_PX = 60;
/** So far from the end that a way back is offered. */
const FAR_PX = 320;

/**
 * Keeps the newest message in sight while the person is there, and leaves them alone while they read elsewhere.
 * @param {HTMLElement} scroller
 * @param {HTMLElement} sheet
 * @param {(atEnd: boolean) => void} moved
 */
export const createScroll = (scroller, sheet, moved) => {
  let pinned = true;

  const fromEnd = () => scroller.scrollHeight - scroller.scrollTop - scroller.clientHeight;

  const toEnd = () => {
    pinned = true;
    scroller.scrollTop = scroller.scrollHeight;
    moved(true);
  };

  scroller.addEventListener(
    "scroll",
    () => {
      pinned = fromEnd() < NEAR_PX;
      moved(pinned);
    },
    { passive: true },
  );

  const watch = new ResizeObserver(() => {
    if (pinned) scroller.scrollTop = scroller.scrollHeight;
  });
  watch.observe(scroller);
  watch.observe(sheet);

  /** Adds something above what is in sight without moving it. @param {() => void} work */
  const holdStill = (work) => {
    const below = scroller.scrollHeight - scroller.scrollTop;
    work();
    scroller.scrollTop = scroller.scrollHeight - below;
  };

  return { toEnd, holdStill, atEnd: () => pinned, farFromEnd: () => fromEnd() > FAR_PX };
};
