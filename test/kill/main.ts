import { parseArgs } from "node:util";
import { killAtRandom } from "./kill.ts";

const { values } = parseArgs({
  options: { kills: { type: "string", default: "200" }, seed: { type: "string", default: "1" } },
});
const tally = await killAtRandom(Number(values.kills), Number(values.seed));
console.table([tally]);
process.exitCode = tally.wrongReplies === 0 && tally.notesKept === tally.notesSent ? 0 : 1;
