import { benchBot } from "./bot.ts";
import { benchHear } from "./hear.ts";
import { benchMemory } from "./memory.ts";
import { benchOutlook } from "./outlook.ts";
import { benchReader } from "./reader.ts";

const benches: Record<string, () => Promise<void> | void> = {
  bot: benchBot,
  hear: benchHear,
  memory: benchMemory,
  outlook: benchOutlook,
  reader: benchReader,
};
const asked = process.argv.slice(2);

for (const [name, bench] of Object.entries(benches)) {
  if (asked.length === 0 || asked.includes(name)) await bench();
}
