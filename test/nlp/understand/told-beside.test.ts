import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import { toldBeside } from "../../../nlp/understand/told-beside.ts";
import type { Moment } from "../../../shared/reading.ts";

const MOMENT: Moment = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
const NOTE = "replaced the water pump today. replaced the converter today";
const records = read(NOTE, MOMENT).records.map(({ fields }, at) => ({ id: at + 1, fields }));
const beside = (text: string) =>
  toldBeside(text, MOMENT, records)
    .map(({ shown }) => shown.fields.component)
    .join();

describe("several told at once", () => {
  it.each([
    "the pump was sunday, and the converter was saturday",
    "the pump was forty two dollars. and my neighbor did the converter",
  ])("are all put right beside whose names other values stand: %s", (text) => {
    expect(beside(text)).toBe("water-pump,converter");
  });
});

describe("one of several told at once", () => {
  it.each([
    ["the pump was today, yes, but the converter went in on sunday", "converter"],
    ["the converter was today, yes, but the pump went in on sunday", "water-pump"],
    ["sunday it was that the pump went in, and the converter was today like i said", "water-pump"],
    ["my neighbor did the pump, but the converter was an electrician, a proper one", "converter"],
  ])("is the one beside whose name another value stands: %s", (text, component) => {
    expect(beside(text)).toBe(component);
  });

  it.each([
    "the pump went in on sunday",
    "the pump and the converter went in on sunday",
    "both of those were sunday",
  ])("is none where nothing tells them apart: %s", (text) => {
    expect(beside(text)).toBe("");
  });
});
