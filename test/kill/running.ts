import { type ChildProcess, spawn } from "node:child_process";

const MAIN = new URL("../../bot/main.ts", import.meta.url).pathname;

export type Running = {
  readonly child: ChildProcess;
  readonly url: string;
  readonly code: string | undefined;
};

/** Starts the program as its own process and waits until it can be used. */
export const startProgram = (home: string, env: Readonly<Record<string, string>> = {}): Promise<Running> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["--import", "tsx", MAIN], {
      env: { ...process.env, HOLDFAST_HOME: home, HOLDFAST_PORT: "0", HOLDFAST_LOG: "silent", ...env },
      stdio: ["ignore", "pipe", "inherit"],
    });
    let printed = "";
    child.stdout.on("data", (chunk: Buffer) => {
      printed += chunk.toString();
      const url = /http:\/\/[\d.]+:\d+\//.exec(printed)?.[0];
      if (url !== undefined && printed.includes("Ctrl+C"))
        resolve({ child, url, code: /#code=(\w+)/.exec(printed)?.[1] });
    });
    child.once("exit", () => reject(new Error(`The program ended before it was ready: ${printed}`)));
  });

export const killed = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    child.once("exit", () => resolve());
    child.kill("SIGKILL");
  });

/** A plain generator of numbers from 0 to 1, so that a run can be repeated (mulberry32). */
export const randomFrom = (seed: number) => {
  let state = seed;
  return (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
};
