import { describe, expect, it } from "vitest";
import { findTimes, type TimeMention } from "../../../nlp/time/index.ts";

const MOMENT = { said: "2026-05-14T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
const first = (text: string, prefer: "past" | "future" = "past"): TimeMention => {
  const [mention] = findTimes(text, MOMENT, { prefer });
  if (mention === undefined) throw new Error(`No time in "${text}".`);
  return mention;
};

describe("a mention", () => {
  it.each([
    ["so back in the spring of '24 i patched it", "back in the spring of '24"],
    ["we did it the week before Thanksgiving, both of us", "the week before Thanksgiving"],
    ["it has been dry for about five months now i think", "for about five months now"],
    ["on the third i swapped the valve", "on the third"],
    ["put a new one in this aftrnoon $23", "this aftrnoon"],
    ["seal is from early-June I think", "early-June"],
    ["the rod went in june 8 2023, for sure", "june 8 2023"],
    ["it went in june 10 bucks", "in june"],
  ])("covers the words of time in %j", (text, words) => {
    const { span } = first(text);
    expect(text.slice(span.start, span.end)).toBe(words);
  });

  it.each([
    ["2022: march, new converter", ["2022-03"]],
    ["2022: new converter", ["2022"]],
    ["twenty four was a bad year", ["2024"]],
    ["in twenty twenty one it leaked, twenty three i was broke", ["2021", "2023"]],
    ["2022 we hired it out, 2024 was quieter", ["2022", "2024"]],
    ["twenty fifteen was when daddy gave it to us", ["2015"]],
    ["jan: new thermocouple", ["2026-01"]],
    ["2000 screws went in, the 2019 stamped tires", []],
    ["march 2020 i packed them and in june that year it went", ["2020-03", "2020-06"]],
    [
      "in twenty nineteen, the summer of that year, and october twelfth that year",
      ["2019", "2019-22", "2019-10-12"],
    ],
    ["it leaked, twenty three i was broke", []],
    ["in twenty twenty one it leaked and twenty three screws went in", ["2021"]],
  ])("knows the years that %j tells of", (text, years) => {
    expect(findTimes(text, MOMENT, { prefer: "past" }).map(({ edtf }) => edtf)).toEqual(years);
  });

  it.each([
    ["yesterday", "past"],
    ["two weeks ago", "past"],
    ["last summer", "past"],
    ["in 2021", "past"],
    ["tomorrow", "future"],
    ["next spring", "future"],
    ["on friday", "either"],
    ["in june", "either"],
    ["end of august", "either"],
    ["the day after christmas", "either"],
    ["today", "either"],
  ])("%s lies in the %s", (text, direction) => {
    expect(first(text).direction).toBe(direction);
  });

  it("names its rule and says what it rests on", () => {
    expect(first("a couple of years back")).toMatchObject({ rule: "ago", role: "point" });
    expect(first("2024-05-03")).toMatchObject({ rule: "written" });
  });

  it("is surer of what is said outright than of what is only near a time", () => {
    expect(first("yesterday").sure).toBeGreaterThan(first("the other day").sure);
    expect(first("for two weeks now").sure).toBeGreaterThan(first("for two weeks").sure);
    expect(first("held for two weeks").sure).toBeGreaterThan(first("parked for two weeks").sure);
    expect(first("over two weeks").sure).toBeLessThan(0.5);
    expect(first("built in 2009").sure).toBeLessThan(0.5);
  });

  it("counts from the anchor only until the text names a time of its own", () => {
    const said = (text: string) => findTimes(text, MOMENT, { anchor: "2025-09" }).map(({ edtf }) => edtf);
    expect(said("a week after that")).toEqual(["2025-10-07"]);
    expect(said("in march i did it and the next day it leaked")).toEqual(["2026-03", "2026-04-01"]);
    expect(first("a week after that").sure).toBeLessThan(0.5);
  });

  it("refuses a moment that is none", () => {
    expect(() => findTimes("today", { ...MOMENT, said: "soon" })).toThrow(RangeError);
    expect(() => findTimes("today", { ...MOMENT, zone: "Mars/Olympus" })).toThrow(RangeError);
  });
});
