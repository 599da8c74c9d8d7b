import { type ChildProcess, fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { Ask, ChildMessage, ChildSetup, Listened } from "./child-messages.ts";
import type { HearProgress } from "./heard.ts";

/** How long a note may take and how much memory the listening process may hold. */
export type ListenLimits = {
  /** For loading the model and decoding. */
  readonly startSeconds: number;
  /** For each second of sound, on top. */
  readonly perSecond: number;
  readonly megabytes: number;
};

export type Ended = { readonly tag: "ended" };

const OWN = import.meta.url;
/** Run from source, the child needs the same loader as its parent. */
const loader = (): string[] => (OWN.endsWith(".ts") ? ["--import", import.meta.resolve("tsx")] : []);

/** Starts a listening process. It ends with its parent. */
export const startListener = (setup: ChildSetup): ChildProcess =>
  fork(fileURLToPath(new URL(OWN.endsWith(".ts") ? "child.ts" : "child.js", OWN)), [JSON.stringify(setup)], {
    execArgv: loader(),
    stdio: ["ignore", "ignore", "ignore", "ipc"],
  });

/** Ends a listening process at once; it may be deep in its work and deaf to anything gentler. */
export const endListener = (child: ChildProcess): void => void child.kill("SIGKILL");

/** Asks a listening process for one note; `ended` when the process goes away first. */
export const askListener = (
  child: ChildProcess,
  ask: Ask,
  limits: ListenLimits,
  tell: (progress: HearProgress) => void,
): Promise<Listened | Ended> =>
  new Promise((resolve) => {
    let timer: NodeJS.Timeout | undefined;
    const settle = (result: Listened | Ended): void => {
      clearTimeout(timer);
      child.off("message", hear).off("exit", gone).off("error", gone);
      resolve(result);
    };
    const gone = (): void => settle({ tag: "ended" });
    const allow = (seconds: number): void => {
      clearTimeout(timer);
      timer = setTimeout(() => stop({ tag: "timed-out", seconds }), seconds * 1000);
    };
    const stop = (result: Listened): void => {
      settle(result);
      endListener(child);
    };
    const hear = (message: ChildMessage): void => {
      if (message.id !== ask.id) return;
      if (message.is === "done") {
        settle(message.result);
        return;
      }
      if (message.progress.doneSeconds === 0)
        allow(limits.startSeconds + message.progress.totalSeconds * limits.perSecond);
      tell(message.progress);
      if (message.megabytes > limits.megabytes) stop({ tag: "out-of-memory", megabytes: message.megabytes });
    };
    child.on("message", hear).on("exit", gone).on("error", gone);
    allow(limits.startSeconds);
    child.send(ask, (error) => {
      if (error) gone();
    });
  });
