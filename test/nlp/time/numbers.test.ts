import { describe, expect, it } from "vitest";
import { findNumbers, spokenNumber } from "../../../nlp/time/index.ts";

const written = (text: string): string =>
  findNumbers(text)
    .map(({ span, value, low, high }) => {
      const words = text.slice(span.start, span.end);
      return low === high ? `${words} = ${value}` : `${words} = ${value} (${low} to ${high})`;
    })
    .join("; ");

describe("numbers in words and digits", () => {
  it.each([
    ["filled it fifteen or twenty times", "fifteen or twenty = 17 (15 to 20)"],
    ["towed two hundred and twelve miles", "two hundred and twelve = 212"],
    ["one thousand two hundred and ten miles", "one thousand two hundred and ten = 1210"],
    ["eleven hundred so far", "eleven hundred = 1100"],
    ["twenty six hundred pounds", "twenty six hundred = 2600"],
    ["a hundred and sixty five bucks", "a hundred and sixty five = 165"],
    ["it came to hundred and ten all in", "hundred and ten = 110"],
    ["the shackles, hundred bucks", "hundred = 100"],
    ["a hundred n ten", "a hundred n ten = 110"],
    ["put a new one in forty four dollars", "one = 1; forty four = 44"],
    ["put a new one forty four dollars", "one = 1; forty four = 44"],
    ["a dozen trips", "a dozen = 12"],
    ["half a dozen screws", "half a dozen = 6"],
    ["a couple of turns", "a couple of = 2"],
    ["a few hundred miles", "a few hundred = 300"],
    ["two dozen rivets", "two dozen = 24"],
    ["it was R2 680 all told", "2 680 = 2680"],
    ["put in 2 205 tires", "2 = 2; 205 = 205"],
    ["a three eighths bolt", "three eighths = 0.375"],
    ["five sixteenths", "five sixteenths = 0.3125"],
    ["a quarter inch", "a quarter = 0.25"],
    ["two and a half turns", "two and a half = 2.5"],
    ["1 1/2 inch", "1 1/2 = 1.5"],
    ["2½ inch", "2½ = 2.5"],
    ["a 3/8 bolt", "3/8 = 0.375"],
    ["two point five amps", "two point five = 2.5"],
    ["12.6 volts", "12.6 = 12.6"],
    ["84,210 on the odometer", "84,210 = 84210"],
    ["odometer says eighty four two ten", "eighty four two ten = 84210"],
    ["swapped in a heavier one twenty eight bucks", "one = 1; twenty eight = 28"],
    ["a stainless one thirty five dollars", "one = 1; thirty five = 35"],
    ["one four two oh three six", "one four two oh three six = 142036"],
    ["one ninety five for the part", "one ninety five = 195"],
    ["make that one ninety", "one ninety = 190"],
    ["make that one fifteen amp fuse", "one = 1; fifteen = 15"],
    ["a new one ninety dollars", "one = 1; ninety = 90"],
    ["in twenty twenty three", "twenty twenty three = 2023"],
    ["in nineteen ninety eight", "nineteen ninety eight = 1998"],
    ["two thousand and nine", "two thousand and nine = 2009"],
    ["forty-one", "forty-one = 41"],
    ["on the twenty-first", "twenty-first = 21"],
    ["the 3rd", "3rd = 3"],
    ["2-3 times", "2-3 = 2 (2 to 3)"],
    ["two three times", "two three = 2 (2 to 3)"],
    ["eight or ten storms", "eight or ten = 9 (8 to 10)"],
    ["eleven, twelve, done", "eleven = 11; twelve = 12"],
    ["filled it nine ten times", "nine ten = 9 (9 to 10)"],
    ["there wasn't one thirty five bucks", "one = 1; thirty five = 35"],
    ["one of them", "one = 1"],
    ["nothing at all", ""],
  ])("%s", (text, want) => {
    expect(written(text)).toBe(want);
  });

  it.each([
    ["two hundred and twelve", 212],
    ["Fifty", 50],
    ["a couple", 2],
    ["none", undefined],
    ["", undefined],
  ])("spokenNumber(%j)", (text, want) => {
    expect(spokenNumber(text)).toBe(want);
  });
});
