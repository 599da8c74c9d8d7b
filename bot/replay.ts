import { openDatabase } from "../store/open.ts";
import { Store } from "../store/store.ts";
import { configFrom } from "./config.ts";
import { lineError, linesOf, writeLine } from "./contracts/json-lines.ts";
import { headSchema, turnSchema } from "./contracts/replay-lines.ts";
import { Replayer } from "./contracts/replayer.ts";
import { createLog } from "./log.ts";
import { optionsOf } from "./options.ts";
import { foundRig, hemisphereOf } from "./rig/rig.ts";
import { createEar, modelPlaces } from "./workers/ear.ts";

const { values } = optionsOf(
  { options: { db: { type: "string", default: ":memory:" } } },
  "Only --db FILE is known: where the log is kept.",
);

const store = new Store(openDatabase(values.db));
const log = createLog("silent", []);
const read = configFrom(process.env);
const ear = createEar(
  modelPlaces(read.ok ? read.config.home : "", read.ok ? read.config.model : null, true),
  read.ok ? read.config.language : "en",
);
let replayer: Replayer | undefined;

const begin = (text: string): Replayer => {
  const head = headSchema.parse(JSON.parse(text));
  foundRig(store, {
    zone: head.zone,
    hemisphere: head.hemisphere ?? hemisphereOf(head.zone),
    ...(head.name === undefined ? {} : { name: head.name }),
  });
  return new Replayer(store, { store, hears: { ready: () => true } }, ear.hearing, log);
};

for await (const line of linesOf(process.stdin)) {
  try {
    if (replayer === undefined) {
      replayer = begin(line.text);
      continue;
    }
    const turn = turnSchema.parse(JSON.parse(line.text));
    for (const nudge of replayer.nudgesUntil(turn.at)) await writeLine(process.stdout, nudge);
    if ("voice" in turn) await ear.look();
    await writeLine(process.stdout, await replayer.play(turn));
  } catch (error) {
    await writeLine(process.stdout, lineError(line, error));
  }
}
ear.close();
store.close();
