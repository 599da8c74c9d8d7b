import { spawnSync } from "node:child_process";
import { expect, it } from "vitest";

const ROOT = new URL("../../", import.meta.url).pathname;

it.each(["main", "backup", "model", "replay"])(
  "%s says how it is used where it is called otherwise",
  (name) => {
    const { status, stderr } = spawnSync("npx", ["tsx", `bot/${name}.ts`, "--wrong"], {
      cwd: ROOT,
      encoding: "utf8",
    });
    expect(status).toBe(2);
    expect(stderr.trim().split("\n")).toEqual([expect.stringMatching(/^Unknown option '--wrong'\. [A-Z]/)]);
  },
);
