import { setPriority } from "node:os";
import type { Ask, ChildMessage, ChildSetup } from "./child-messages.ts";
import { listen } from "./listen.ts";
import { loadRecogniser, type Recogniser } from "./recogniser.ts";

/** The process that listens: inference blocks whatever process it is in, so it has one of its own. */
const BELOW_THE_CHAT = 10;
const BYTES_A_MEGABYTE = 1e6;

const setup = JSON.parse(process.argv[2] ?? "") as ChildSetup;
const say = (message: ChildMessage): void => void process.send?.(message);

let loading: Promise<Recogniser> | undefined;
const recogniser = (): Promise<Recogniser> => {
  loading ??= loadRecogniser(setup.modelDir, setup.language);
  return loading;
};

const answer = async ({ id, path, words }: Ask): Promise<void> => {
  const ready = await recogniser().catch((error: unknown) => String(error));
  if (typeof ready === "string") {
    say({ is: "done", id, result: { tag: "no-model", problem: ready } });
    return;
  }
  const result = await listen(ready, path, words, (progress) =>
    say({ is: "progress", id, progress, megabytes: process.memoryUsage.rss() / BYTES_A_MEGABYTE }),
  );
  say({ is: "done", id, result });
};

try {
  setPriority(BELOW_THE_CHAT);
} catch {
  // Some systems do not let a process lower itself; it then runs beside the chat as an equal.
}
process.on("message", (ask: Ask) => {
  answer(ask).catch(() => process.exit(1));
});
process.on("disconnect", () => process.exit(0));
