import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../help/store.ts";

const ROOT = new URL("../../", import.meta.url).pathname;

const run = (
  script: "read" | "replay",
  lines: readonly string[],
  ...options: string[]
): Record<string, unknown>[] => {
  const { stdout } = spawnSync("npm", ["run", "--silent", script, "--", ...options], {
    cwd: ROOT,
    input: `${lines.join("\n")}\n`,
    encoding: "utf8",
  });
  return stdout
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as Record<string, unknown>);
};

const NOTE = {
  id: "n1",
  said: "2026-05-14T18:30:00-06:00",
  zone: "America/Denver",
  hemisphere: "north",
  text: "Towed 212 miles today. Yesterday I greased the wheel bearings.",
};

describe("read", () => {
  it("gives the gold fields of each note, and an error line for a bad one, and goes on", () => {
    const [first, bad, worse, last] = run("read", [
      JSON.stringify(NOTE),
      "{not json",
      JSON.stringify({ id: "x", text: "y" }),
      JSON.stringify({ ...NOTE, id: "n2" }),
    ]);
    expect(first).toMatchObject({
      id: "n1",
      records: [{ kind: "repair", component: "wheel-bearing", action: "lubricate", date: "2026-05-13" }],
      usage: [{ count: 212, unit: "miles", date: "2026-05-14" }],
    });
    expect([bad?.["error"], worse?.["error"]]).toEqual([expect.any(String), expect.any(String)]);
    expect(last).toMatchObject({ id: "n2" });
  });
});

describe("replay", () => {
  const HEAD = JSON.stringify({ zone: "America/Denver", hemisphere: "north", name: "Magpie" });
  const turn = (at: string, act: object) => JSON.stringify({ at, ...act });

  it("gives each turn's replies, buttons, records and answer, and the nudges between", () => {
    const lines = run("replay", [
      HEAD,
      turn("2026-05-14T18:30:00-06:00", { text: "patched the gray tank with epoxy today, 24 dollars" }),
      "nonsense",
      turn("2026-05-14T18:31:00-06:00", { tap: "no such button" }),
      turn("2026-09-01T12:00:00-06:00", { text: "what did I spend in 2026?" }),
      turn("2026-09-01T12:01:00-06:00", { tap: "Still good" }),
    ]);
    const nudges = lines.filter((line) => line["nudge"] === true);
    const [told, notJson, noButton, asked, tapped] = lines.filter((line) => line["nudge"] !== true);
    expect(told).toMatchObject({
      turn: 1,
      records: [{ id: 1, component: "gray-tank", cost: 24 }],
      answer: null,
    });
    expect(told?.["buttons"]).toContain("Undo");
    expect([notJson, noButton]).toEqual([
      { error: "This line is not JSON.", line: 3 },
      { error: 'No message shows a button "no such button".', line: 4 },
    ]);
    expect(nudges[0]).toMatchObject({ nudge: true, records: [1] });
    expect(nudges[0]?.["at"]).toMatch(/T09:00:00-06:00$/);
    expect(asked).toMatchObject({ answer: { kind: "cost", cost: 24, records: [1] } });
    expect(tapped).toMatchObject({ records: [{ id: 1, outcome: "holding" }] });
  });

  it("goes on in a file where it was left", () => {
    const file = join(temporaryFolder(), "rig.db");
    run(
      "replay",
      [HEAD, turn("2026-05-14T18:30:00-06:00", { text: "greased the wheel bearings today" })],
      "--db",
      file,
    );
    const [again] = run(
      "replay",
      [HEAD, turn("2026-05-20T18:30:00-06:00", { text: "when did I last grease the bearings?" })],
      "--db",
      file,
    );
    expect(again).toMatchObject({ answer: { records: [1] } });
  });
});
