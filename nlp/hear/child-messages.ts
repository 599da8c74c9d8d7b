import type { HeardPart, HearFailure, HearProgress } from "./heard.ts";

/** How the listening process is set up; given to it as JSON on its command line. */
export type ChildSetup = { readonly modelDir: string; readonly language: string };

/** One note to listen to. */
export type Ask = { readonly id: number; readonly path: string; readonly words: readonly string[] };

/** What the recogniser made of a note, before any word is put right. */
export type Listened =
  | { readonly tag: "listened"; readonly parts: readonly HeardPart[]; readonly seconds: number }
  | HearFailure;

/** What the listening process says. `megabytes` is the memory it holds. */
export type ChildMessage =
  | {
      readonly is: "progress";
      readonly id: number;
      readonly progress: HearProgress;
      readonly megabytes: number;
    }
  | { readonly is: "done"; readonly id: number; readonly result: Listened };
