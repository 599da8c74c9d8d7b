import { describe, expect, it } from "vitest";
import { correct } from "../../../nlp/correct/correct.ts";
import { respelt, reworded } from "../../../nlp/correct/reworded.ts";
import type { Moment } from "../../../shared/reading.ts";
import { linesOf } from "../lines.ts";
import { correctionText } from "./correction-text.ts";

const MOMENT: Moment = { said: "2025-08-02T14:30:00-06:00", zone: "America/Denver", hemisphere: "north" };

describe("corrections in the many forms that have a plainer one", () => {
  for (const line of linesOf(new URL("reworded.txt", import.meta.url))) {
    const [text = "", wanted = ""] = line.split(" | ");
    it(text, () => {
      const found = correct(reworded(text) ?? respelt(text), MOMENT);
      expect(found === undefined ? "none" : correctionText(found.correction)).toBe(wanted);
    });
  }
});
