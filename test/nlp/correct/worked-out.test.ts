import { describe, expect, it } from "vitest";
import { offersIn } from "../../../nlp/correct/offers.ts";
import type { RecordFields } from "../../../shared/record.ts";

const MOMENT = { said: "2025-08-03T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

const paid = (cost: number | null): RecordFields => ({
  kind: "repair",
  component: "tire",
  where: null,
  action: "replace",
  materials: [],
  date: "2025-08-02",
  outcome: "untested",
  exposure: [],
  cost,
  fault: null,
  due: null,
});

const sumsOffered = (text: string, cost: number | null) =>
  offersIn(text, MOMENT, paid(cost)).filter(({ field }) => field === "cost");
const costs = (text: string, cost: number | null): readonly string[] =>
  sumsOffered(text, cost).map(({ is }) => is);
const sums = (text: string, cost: number | null): readonly string[] =>
  sumsOffered(text, cost).flatMap(({ is, reckoned }) => (reckoned === true ? [is] : []));

describe("two sums in one breath", () => {
  it("are the wrong one and the right one", () => {
    expect(costs("not twenty six twenty three with the discount", 26)).toContain("23");
    expect(costs("not twenty six twenty three with the discount", 40)).not.toContain("23");
  });
});

describe("a sum had off somebody", () => {
  it("is what was paid, and no discount", () => {
    expect(costs("the till roll says they had 38 off me", 30)).toContain("38");
  });
});

describe("sums that are not said but can be worked out", () => {
  it.each([
    ["i forgot the nine dollars for the tape", 26, "35"],
    ["he knocked ten dollars off", 60, "50"],
    ["it was two at 112", 210, "224"],
    ["that was each and there were five of them", 9, "45"],
    ["ninety was the foam, then forty five for the covers", null, "135"],
    ["we went halves on it", 240, "120"],
    ["make it double", 35, "70"],
    ["no it was under warranty", 85, "0"],
  ])("%s", (text, cost, sum) => {
    expect(sums(text, cost)).toContain(sum);
  });

  it.each([
    ["make it thirty more, they took that for the balancing", 760, ["790"]],
    ["ten off that, he forgot the discount", 60, ["50"]],
  ])("only the way that is told: %s", (text, cost, all) => {
    expect(costs(text, cost)).toEqual(all);
  });

  it.each([
    ["forty more like it", 30, "40"],
    ["it was more like 40", 30, "40"],
  ])("no sum on top: %s", (text, cost, sum) => {
    expect(costs(text, cost)).toContain(sum);
  });

  it("none of a day, page or pitch that is numbered", () => {
    expect(costs("we stood on pitch 14 since day 1", 40)).toEqual([]);
  });

  it("none where nothing is reckoned with", () => {
    expect(sums("it was a tuesday", 40)).toEqual([]);
  });

  it("no day to come for work that is done", () => {
    const dates = offersIn("it was the 9th of august", MOMENT, paid(40)).flatMap(({ field, is }) =>
      field === "date" ? [is] : [],
    );
    expect(dates).not.toContain("2025-08-09");
  });

  it("none from many numbers", () => {
    expect(sums("12 dollars 15 dollars 16 dollars 18 dollars 19 dollars", null)).toEqual([]);
  });
});
