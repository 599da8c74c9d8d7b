import type { ChildProcess } from "node:child_process";
import type { Listened } from "./child-messages.ts";
import type { Heard, HearFailure, HearProgress } from "./heard.ts";
import { askListener, type Ended, endListener, type ListenLimits, startListener } from "./listener.ts";
import { nearMissRepair } from "./near-misses.ts";
import { TRADE_PHRASES } from "./trade-phrases.ts";

export type HearingSetup = {
  /** A model folder as `findModel` gives it. */
  readonly modelDir: string;
  /** ISO 639-1; only a multilingual model looks at it. */
  readonly language?: string;
  readonly limits?: Partial<ListenLimits>;
  /** After so long without a note the model is let go of. */
  readonly idleSeconds?: number;
};

export type HearOptions = {
  readonly onProgress?: (progress: HearProgress) => void;
  /** Names and words that may come up in this note, most likely first. */
  readonly words?: readonly string[];
};

export type Hearing = {
  /** The words of a sound file. Notes are taken one at a time, in the order of the calls. Never rejects. */
  readonly hear: (path: string, options?: HearOptions) => Promise<Heard | HearFailure>;
  /** Ends the listening process; a note at work gives `closed`. */
  readonly close: () => void;
};

const LIMITS: ListenLimits = { startSeconds: 120, perSecond: 12, megabytes: 3000 };
const IDLE_SECONDS = 300;
const TRIES = 2;

const putRight = nearMissRepair(TRADE_PHRASES);

const spoken = (listened: Extract<Listened, { tag: "listened" }>, words: readonly string[] = []): Heard => {
  const hypothesis = listened.parts.map(({ text }) => text).join(" ");
  return {
    tag: "heard",
    hypothesis,
    parts: listened.parts,
    seconds: listened.seconds,
    ...putRight(hypothesis, words),
  };
};

/** Speech to text in a process of its own, with limits of time and memory; a crash costs one more try. */
export const createHearing = (setup: HearingSetup): Hearing => {
  const limits = { ...LIMITS, ...setup.limits };
  let child: ChildProcess | undefined;
  let idle: NodeJS.Timeout | undefined;
  let last: Promise<unknown> = Promise.resolve();
  let closed = false;
  let count = 0;

  const letGo = (): void => {
    if (child) endListener(child);
    child = undefined;
  };
  const listening = (): ChildProcess => {
    if (child && !child.killed && child.exitCode === null && child.connected) return child;
    child = startListener({ modelDir: setup.modelDir, language: setup.language ?? "en" });
    return child;
  };
  const tried = async (path: string, options: HearOptions): Promise<Listened | Ended> => {
    const ask = { id: ++count, path, words: options.words ?? [] };
    return askListener(listening(), ask, limits, options.onProgress ?? (() => undefined));
  };
  const heard = async (path: string, options: HearOptions): Promise<Heard | HearFailure> => {
    clearTimeout(idle);
    for (let attempt = 0; attempt < TRIES; attempt++) {
      if (closed) return { tag: "closed" };
      const result = await tried(path, options);
      if (result.tag === "ended") continue;
      if (result.tag === "no-model") letGo();
      return result.tag === "listened" ? spoken(result, options.words) : result;
    }
    return { tag: closed ? "closed" : "crashed" };
  };
  const rest = (): void => {
    if (!closed) idle = setTimeout(letGo, (setup.idleSeconds ?? IDLE_SECONDS) * 1000).unref();
  };

  return {
    hear: (path, options = {}) => {
      const result = last.then(() => heard(path, options)).finally(rest);
      last = result;
      return result;
    },
    close: () => {
      closed = true;
      clearTimeout(idle);
      letGo();
    },
  };
};
