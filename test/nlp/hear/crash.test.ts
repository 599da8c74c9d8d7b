import type { ChildProcess, fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { createHearing } from "../../../nlp/hear/hearing.ts";
import { littleModel } from "./little-model.ts";

const children: ChildProcess[] = [];
vi.mock("node:child_process", async (original) => {
  const actual = await original<typeof import("node:child_process")>();
  const watched = (...args: Parameters<typeof fork>): ChildProcess => {
    const child = actual.fork(...args);
    children.push(child);
    return child;
  };
  return { ...actual, fork: watched };
});

const note = fileURLToPath(new URL("files/note.ogg", import.meta.url));
beforeEach(() => void children.splice(0));
let close = (): void => undefined;
afterEach(() => close());

it("tries once more when the listening process dies, and gives up when it dies again", async () => {
  const hearing = createHearing({ modelDir: await littleModel() });
  close = hearing.close;
  const work = hearing.hear(note);
  await vi.waitFor(() => expect(children).toHaveLength(1));
  children[0]?.kill("SIGKILL");
  expect((await work).tag).toBe("heard");
  expect(children).toHaveLength(2);

  children[1]?.kill("SIGKILL");
  const again = hearing.hear(note);
  for (const next of [2, 3]) {
    await vi.waitFor(() => expect(children).toHaveLength(next + 1));
    children[next]?.kill("SIGKILL");
  }
  expect(await again).toEqual({ tag: "crashed" });
});
