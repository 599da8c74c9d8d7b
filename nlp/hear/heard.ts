import type { SoundFailure } from "./sound.ts";

/** What was said in one stretch between pauses. */
export type HeardPart = { readonly startSeconds: number; readonly endSeconds: number; readonly text: string };

/** Words put right by their sound: where in `text`, what stands there now, and what the recogniser wrote. */
export type Repair = {
  readonly start: number;
  readonly end: number;
  readonly written: string;
  readonly heard: string;
};

export type Heard = {
  readonly tag: "heard";
  /** Empty when nothing was said. */
  readonly text: string;
  /** As the recogniser wrote it, before any word was put right. */
  readonly hypothesis: string;
  readonly repairs: readonly Repair[];
  readonly parts: readonly HeardPart[];
  readonly seconds: number;
};

/** Why a note has no words. The file is kept in every case; `no-model`, `timed-out`, `crashed` and `closed` are worth another try. */
export type HearFailure =
  | SoundFailure
  | { readonly tag: "no-file" }
  | { readonly tag: "no-model"; readonly problem: string }
  | { readonly tag: "timed-out"; readonly seconds: number }
  | { readonly tag: "out-of-memory"; readonly megabytes: number }
  | { readonly tag: "crashed" }
  | { readonly tag: "closed" };

export type HearProgress = { readonly doneSeconds: number; readonly totalSeconds: number };
