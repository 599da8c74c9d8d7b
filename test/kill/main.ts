import { parseArgs } from "node:util";
import { killAtRandom } from "./kill.ts";
import { killWhileListening } from "./voice.ts";

const { values } = parseArgs({
  options: {
    kills: { type: "string", default: "200" },
    seed: { type: "string", default: "1" },
    voice: { type: "boolean", default: false },
    notes: { type: "string", default: "100" },
  },
});
const [kills, seed, notes] = [Number(values.kills), Number(values.seed), Number(values.notes)];

if (values.voice) {
  const tally = await killWhileListening(notes, kills, seed);
  console.table([tally]);
  process.exitCode = tally.transcribed === notes && tally.outOfOrder + tally.takenTwice === 0 ? 0 : 1;
} else {
  const tally = await killAtRandom(kills, seed);
  console.table([tally]);
  process.exitCode = tally.wrongReplies === 0 && tally.notesKept === tally.notesSent ? 0 : 1;
}
