import { describe, expect, it } from "vitest";
import { correct } from "../../../nlp/correct/correct.ts";
import type { Moment } from "../../../shared/reading.ts";
import { linesOf } from "../lines.ts";
import { correctionText } from "./correction-text.ts";

const MOMENT: Moment = { said: "2025-08-02T14:30:00-06:00", zone: "America/Denver", hemisphere: "north" };

describe("corrections in many words", () => {
  for (const line of linesOf(new URL("corrections.txt", import.meta.url))) {
    const [text = "", wanted = ""] = line.split(" | ");
    it(text, () => {
      const found = correct(text, MOMENT);
      expect(found === undefined ? "none" : correctionText(found.correction)).toBe(wanted);
    });
  }
});

describe("a correction with a note behind it", () => {
  it("leaves the note to be read", () => {
    const found = correct("no that was the gray tank, and I also greased the tongue jack", MOMENT);
    expect(found && correctionText(found.correction)).toBe("component gray-tank");
    expect(found?.rest).toBe("and I also greased the tongue jack");
  });
  it("takes in a second correction", () => {
    const found = correct("the shop did that one, not me, and it was 160 all in", MOMENT);
    expect(found && correctionText(found.correction)).toBe("by the shop, cost 160");
    expect(found?.rest).toBeNull();
  });
  it("says what it was not", () => {
    expect(correct("it wasn't the black tank, it was the gray one", MOMENT)?.correction.not).toEqual({
      component: "black-tank",
    });
  });
});
