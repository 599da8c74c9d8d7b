import { performance } from "node:perf_hooks";
import { startTalk } from "../help/talk.ts";
import { quantile } from "./quantile.ts";

const NOTES = 200;

/** From a text note's sending to its reply on the page, over HTTP both ways, with everything in between on disk. */
export const benchBot = async (): Promise<void> => {
  const talk = await startTalk();
  const times: number[] = [];
  const replies = async (): Promise<number> =>
    (await talk.person.messages()).filter(({ from }) => from?.is_bot === true).length;
  for (let note = 0; note < NOTES; note++) {
    const before = await replies();
    const start = performance.now();
    await talk.person.say(`patched the gray tank with epoxy today, ${note} dollars, and towed ${note} miles`);
    while ((await replies()) === before) await new Promise(setImmediate);
    times.push(performance.now() - start);
  }
  const sorted = times.toSorted((a, b) => a - b);
  console.log(`Text note to its reply over HTTP, ${NOTES} notes on one log:`);
  console.table([
    {
      "median ms": quantile(sorted, 0.5).toFixed(1),
      "p95 ms": quantile(sorted, 0.95).toFixed(1),
      "memory at rest, MB": (process.memoryUsage().rss / 1e6).toFixed(0),
    },
  ]);
  await talk.stop();
};
