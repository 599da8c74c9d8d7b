import { describe, expect, it } from "vitest";
import { periodIn } from "../../../nlp/ask/period.ts";
import { topicOf } from "../../../nlp/ask/topic.ts";

const MOMENT = { said: "2025-08-02T14:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("what a question is about", () => {
  it("takes the thing above a stove for anything but the stove", () => {
    expect(topicOf("the thing above the stove").named).toEqual([]);
    expect(topicOf("the seal on the stove").named[0]?.component).toBe("stove");
  });

  it("takes a part that names its thing for no stuff", () => {
    expect(topicOf("cost of the shackles").materials).toEqual([]);
    expect(topicOf("what did the butyl tape cost").materials).toEqual(["butyl tape"]);
  });

  it.each(["brake costs over the years", "brake costs, all years"])("bounds nothing: %s", (text) => {
    expect(periodIn(text, MOMENT).period).toBeNull();
  });
});
