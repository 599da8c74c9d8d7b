import { parseArgs } from "node:util";
import { asStoreProblem } from "../store/problem.ts";
import { machineClock } from "./clock.ts";
import { configFrom } from "./config.ts";
import { awaitsPairing, pairingCode } from "./conversation/pair.ts";
import { pageAddress, startProgram } from "./program.ts";

const say = (sentence: string): void => console.log(sentence);

const endBadly = (error: unknown): never => {
  const problem = asStoreProblem(error, "The database");
  console.error(
    problem?.message ??
      `Holdfast had to stop: ${error instanceof Error ? error.message : "an unknown fault"}`,
  );
  process.exit(1);
};

const { values } = parseArgs({ options: { demo: { type: "boolean", default: false } } });

const start = async (): Promise<void> => {
  const read = configFrom(process.env);
  if (!read.ok) return endBadly(new Error(read.problem));
  const program = await startProgram(read.config, { clock: machineClock, say, onFatal: endBadly });
  say(`Holdfast is listening. Open ${pageAddress(program)} in a browser on this machine.`);
  if (awaitsPairing(program.store)) {
    say(`Pairing code for a phone on the messenger: ${pairingCode(program.store)} (it works once).`);
  }
  say(`Everything is kept in ${read.config.home}. Stop with Ctrl+C.`);
  const stop = (): void => void program.stop().then(() => process.exit(0), endBadly);
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
};

if (values.demo) say("demo");
start().catch(endBadly);
