import { expect, it } from "vitest";
import { killAtRandom } from "./kill.ts";

it("keeps every note, makes every record once and shows every reply once, however often it is killed", async () => {
  const tally = await killAtRandom(6, 7);
  expect(tally).toMatchObject({ notesSent: 18, notesKept: 18, records: 18, replies: 18, wrongReplies: 0 });
}, 120_000);
