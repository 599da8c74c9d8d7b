import { describe, expect, it } from "vitest";
import { ask } from "../../../nlp/ask/ask.ts";
import { isCostOfRig } from "../../../nlp/ask/rig-cost.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("what the whole rig came to", () => {
  it.each([
    "how much did the van set me back in 2024 as i sit on the floor with a shoebox of receipts",
    "what did she cost me last year all told because the neighbour bought a generator",
    "my sister keeps asking so what has the old girl cost us before the pantry is bare",
    "what did i sink into the trailer in 2024 and be gentle i am standing by the stove",
    "wife wants the damage for 2024 everything i put into the van",
  ])("is asked of all, whatever is named beside it: %s", (text) => {
    const query = ask(text, MOMENT, null);
    expect(query).toMatchObject({ ask: "cost", topic: { named: [], systems: [] } });
  });

  it.each([
    "what did the trailer brakes cost me",
    "what has the fridge in the van cost me",
    "how much did i spend on the awning this year",
    "what did i put into the water heater",
    "what have i spent on it so far",
    "how much have i spent on the trailer for the brakes",
    "how much did the awning on that old van cost me",
    "what did the fridge and the van cost me",
    "what did i spend on her and the awning",
  ])("is not asked of one thing: %s", (text) => {
    expect(isCostOfRig(text)).toBe(false);
  });
});

describe("somebody named in a question of money", () => {
  const whoOf = (text: string): string | null => {
    const query = ask(text, MOMENT, null);
    return query.ask === "cost" ? query.topic.who : null;
  };
  it.each([
    "my husband is looking at a new one so what have i sunk into the furnace in total",
    "what did she cost me last year because the brother in law wants the number",
  ])("asks, and is not paid: %s", (text) => {
    expect(whoOf(text)).toBeNull();
  });
  it.each([
    ["how much have i paid the dealer this year all told", "dealer"],
    ["how much did we pay the welder in all", "welder"],
    ["how much have we spent on the mechanic", "mechanic"],
  ])("is paid: %s", (text, who) => {
    expect(whoOf(text)).toBe(who);
  });
});
