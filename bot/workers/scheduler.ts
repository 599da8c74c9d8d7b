import type { Store } from "../../store/store.ts";
import type { Clock } from "../clock.ts";
import { sendNudges } from "../nudges/send-nudges.ts";

const LOOK_EVERY_MS = 15_000;

/** Looks every few seconds whether a nudge may go out, so that sleep and clock changes need no care of their own. */
export const createScheduler = (parts: {
  readonly store: Store;
  readonly clock: Clock;
  readonly onSent: () => void;
  readonly onFatal: (error: unknown) => void;
  readonly everyMs?: number;
}): { stop(): void } => {
  const tick = (): void => {
    try {
      if (sendNudges(parts.store, parts.clock.now()).sent) parts.onSent();
    } catch (error) {
      parts.onFatal(error);
    }
  };
  const timer = setInterval(tick, parts.everyMs ?? LOOK_EVERY_MS);
  tick();
  return { stop: () => clearInterval(timer) };
};
