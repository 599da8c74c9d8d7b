import { describe, expect, it } from "vitest";
import { coreOf } from "../../../nlp/ask/core.ts";
import { understand } from "../../../nlp/understand/understand.ts";
import { EMPTY_SCENE } from "../../../shared/memory/scene.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("a question at the end of talk as to why it is asked", () => {
  it.each([
    [
      "my neighbour is looking at a brand new one and i say we are ahead so um what have i sunk into that heater in total",
      "what have i sunk into that heater in total",
    ],
    [
      "i am at the counter and the fellow wants to sell me a kit so which thing i did to the roof held the longest",
      "which thing i did to the roof held the longest",
    ],
    ["i cannot for the life remember who told me what was wrong with the pump", undefined],
    ["the hub is hot so what did i grease it with", undefined],
    ["what did i spend on the awning and how much was the fabric", undefined],
    ["greased the hubs and what a mess", undefined],
  ])("is %s", (text, core) => {
    expect(coreOf(text)).toBe(core);
  });

  it("is of the time that was told before it", () => {
    const text =
      "i am doing the books for 2024 and the accountant wants the figure so what did the furnace cost me";
    expect(understand(text, MOMENT, EMPTY_SCENE)).toMatchObject({
      query: { ask: "cost", period: { from: "2024-01-01" } },
    });
  });

  it("is about what it names itself", () => {
    const text =
      "my neighbour is looking at the price of a new awning and i say we are still ahead so um what have i spent on the furnace in total since i started";
    const intent = understand(text, MOMENT, EMPTY_SCENE);
    expect(intent).toMatchObject({
      is: "ask",
      query: { ask: "cost", topic: { named: [{ component: "furnace" }] } },
    });
  });
});
