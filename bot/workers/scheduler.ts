const LOOK_EVERY_MS = 15_000;

/** Looks every few seconds whether a nudge may go out, so that sleep and clock changes need no care of their own. */
export const createScheduler = (
  nudge: () => unknown,
  onFatal: (error: unknown) => void,
): { stop(): void } => {
  const tick = (): void => {
    try {
      nudge();
    } catch (error) {
      onFatal(error);
    }
  };
  const timer = setInterval(tick, LOOK_EVERY_MS);
  tick();
  return { stop: () => clearInterval(timer) };
};
