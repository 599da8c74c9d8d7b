import { asStoreProblem } from "../store/problem.ts";
import { machineClock } from "./clock.ts";
import { type Config, configFrom } from "./config.ts";
import { awaitsPairing, pairingCode } from "./conversation/pair.ts";
import { startDemo } from "./demo/demo.ts";
import { optionsOf } from "./options.ts";
import { pageAddress, startProgram } from "./program.ts";

const say = (sentence: string): void => console.log(sentence);

const codeOf = (error: unknown): unknown =>
  typeof error === "object" && error !== null && "code" in error ? error.code : undefined;

/** The page's address can't be had. */
const pageProblem = (error: unknown): string | undefined => {
  if (codeOf(error) === "EADDRINUSE")
    return "The chat page's port is taken by another program. Stop that one, or set HOLDFAST_PORT to another number.";
  if (codeOf(error) === "EADDRNOTAVAIL")
    return "HOLDFAST_HOST is not an address of this machine. Leave it out, or set it to 0.0.0.0.";
  return undefined;
};

const endBadly = (error: unknown): never => {
  const problem = asStoreProblem(error, "The database");
  console.error(
    pageProblem(error) ??
      problem?.message ??
      `Holdfast had to stop: ${error instanceof Error ? error.message : "an unknown fault"}`,
  );
  process.exit(1);
};

const { values } = optionsOf(
  { options: { demo: { type: "boolean", default: false } } },
  "Begin your own log with npm start, see an invented one with npm run demo; settings stand in README.md.",
);

const stopOnSignal = (stop: () => Promise<void>): void => {
  const end = (): void => void stop().then(() => process.exit(0), endBadly);
  process.once("SIGINT", end);
  process.once("SIGTERM", end);
};

const demo = async (config: Config): Promise<void> => {
  const { url, stop } = await startDemo(config, { say, onFatal: endBadly });
  say(`Magpie's seasons are told. Open ${url} and wait a moment: a nudge is about to come.`);
  say("Voice notes are heard by the small model for synthetic voices; it does not understand people.");
  say("This is invented and goes away when you stop it with Ctrl+C.");
  stopOnSignal(stop);
};

const live = async (config: Config): Promise<void> => {
  const program = await startProgram(config, { clock: machineClock, say, onFatal: endBadly });
  say(`Holdfast is listening. Open ${pageAddress(program)} in a browser on this machine.`);
  for (const address of program.elsewhere) say(`From another device on this network: ${address}`);
  if (awaitsPairing(program.store)) say(`Pairing code, which works once: ${pairingCode(program.store)}`);
  say(`Everything is kept in ${config.home}. Stop with Ctrl+C.`);
  stopOnSignal(program.stop);
};

const read = configFrom(process.env);
if (!read.ok) endBadly(new Error(read.problem));
else (values.demo ? demo(read.config) : live(read.config)).catch(endBadly);
