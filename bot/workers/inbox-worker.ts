import type { Logger } from "pino";
import type { InboxItem } from "../../store/inbox.ts";
import { asStoreProblem, StoreProblem } from "../../store/problem.ts";
import type { Clock } from "../clock.ts";
import { apologise, type Deps, handle } from "../conversation/handle.ts";
import type { Turn } from "../conversation/turn.ts";

const ATTEMPTS = 3;

/** Handles one update and all that follows from it in one transaction. Throws StoreProblem when nothing can be written. */
export const handleItem = (deps: Deps, item: InboxItem, clock: Clock, log: Logger): Turn | undefined => {
  const { store } = deps;
  try {
    return store.transact(() => {
      const turn = handle(deps, item, clock.now());
      store.inbox.done(item.id);
      return turn;
    });
  } catch (error) {
    const problem = asStoreProblem(error, "the database");
    if (problem !== undefined) throw problem;
    log.error(
      { inbox: item.id, fault: error instanceof Error ? error.stack : "unknown" },
      "an update could not be handled",
    );
    store.transact(() => {
      const fate = store.inbox.failed(item.id, error instanceof Error ? error.name : "unknown", ATTEMPTS);
      if (fate === "set-aside") apologise(store, item, clock.now());
    });
    return undefined;
  }
};

export type InboxWorker = { readonly wake: () => void; readonly stop: () => void };

/** Handles what waits in the inbox, one at a time, leaving room for others in between. */
export const createInboxWorker = (parts: {
  readonly deps: Deps;
  readonly clock: Clock;
  readonly log: Logger;
  readonly onHandled: () => void;
  readonly onFatal: (problem: StoreProblem) => void;
}): InboxWorker => {
  let awake = false;
  let stopped = false;

  const step = (): void => {
    if (stopped) return;
    try {
      const item = parts.deps.store.inbox.next();
      if (item === undefined) {
        awake = false;
        return;
      }
      handleItem(parts.deps, item, parts.clock, parts.log);
      parts.onHandled();
      setImmediate(step);
    } catch (error) {
      if (!(error instanceof StoreProblem)) throw error;
      stopped = true;
      parts.onFatal(error);
    }
  };

  return {
    wake: () => {
      if (awake || stopped) return;
      awake = true;
      setImmediate(step);
    },
    stop: () => {
      stopped = true;
    },
  };
};
