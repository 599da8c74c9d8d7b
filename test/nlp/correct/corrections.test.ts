import { describe, expect, it } from "vitest";
import { correct } from "../../../nlp/correct/correct.ts";
import type { Change, Correction, DateChange, Target } from "../../../shared/memory/correction.ts";
import type { Moment } from "../../../shared/reading.ts";
import { linesOf } from "../lines.ts";

const MOMENT: Moment = { said: "2025-08-02T14:30:00-06:00", zone: "America/Denver", hemisphere: "north" };

const dateText = (to: DateChange): string => {
  if ("on" in to) return `date ${to.on}`;
  if ("dayOfMonth" in to) return `date day ${to.dayOfMonth}`;
  if ("weekday" in to) return `date weekday ${to.weekday} ${to.side}`;
  return "days" in to.shift ? `date ${to.shift.days} days` : `date ${to.shift.months} months`;
};

const changeText = (change: Change): string => {
  switch (change.change) {
    case "fields":
      return Object.entries(change.to)
        .map(([field, value]) => `${field} ${JSON.stringify(value).replaceAll('"', "")}`)
        .join(", ");
    case "date":
      return dateText(change.to);
    case "materials":
      return [
        "stuff",
        ...change.drop.map((each) => `-${each}`),
        ...change.add.map((each) => `+${each}`),
      ].join(" ");
    case "phrase":
      return `words ${change.to} for ${change.instead}`;
    case "done-by":
      return `by ${change.to ?? "me"}`;
    case "number":
      return ["number", change.to, change.unit].filter((part) => part !== null).join(" ");
    case "remove":
    case "part":
    case "join":
      return change.change;
  }
};

const targetText = (target: Target): string => {
  if (target.by === "number") return ` @${target.numbers.join(",")}`;
  if (target.by === "topic") return ` @${target.topic.named[0]?.component ?? target.topic.where.join(" ")}`;
  return "";
};

const textOf = ({ changes, target }: Correction): string =>
  changes.map(changeText).join(", ") + targetText(target);

describe("corrections in many words", () => {
  for (const line of linesOf(new URL("corrections.txt", import.meta.url))) {
    const [text = "", wanted = ""] = line.split(" | ");
    it(text, () => {
      const found = correct(text, MOMENT);
      expect(found === undefined ? "none" : textOf(found.correction)).toBe(wanted);
    });
  }
});

describe("a correction with a note behind it", () => {
  it("leaves the note to be read", () => {
    const found = correct("no that was the gray tank, and I also greased the tongue jack", MOMENT);
    expect(found && textOf(found.correction)).toBe("component gray-tank");
    expect(found?.rest).toBe("and I also greased the tongue jack");
  });
  it("takes in a second correction", () => {
    const found = correct("the shop did that one, not me, and it was 160 all in", MOMENT);
    expect(found && textOf(found.correction)).toBe("by the shop, cost 160");
    expect(found?.rest).toBeNull();
  });
  it("says what it was not", () => {
    expect(correct("it wasn't the black tank, it was the gray one", MOMENT)?.correction.not).toEqual({
      component: "black-tank",
    });
  });
});
