import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";

const MOMENT = { said: "2026-05-14T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
const told = (text: string): string[] =>
  read(text, MOMENT).records.map(({ fields: { kind, component, action } }) =>
    [kind, component, action].flatMap((each) => each ?? []).join(" "),
  );

describe("things named in one breath", () => {
  it("were all worked on where one deed is told of them", () => {
    expect(told("greased the hitch and the tongue jack")).toEqual([
      "repair hitch lubricate",
      "repair tongue-jack lubricate",
    ]);
    expect(told("checked the smoke alarm and the gas alarm")).toEqual([
      "check smoke-alarm test",
      "check gas-alarm test",
    ]);
  });

  it("are told of apart where the later one begins something else", () => {
    expect(
      told("cleaned the a/c filter, and the ladder was hanging by one bolt so i bolted it back on"),
    ).toEqual(["repair air-conditioner clean", "repair ladder refasten"]);
    expect(told("checked the smoke alarm and the gas alarm was dead so i changed it")).toEqual([
      "check smoke-alarm test",
      "repair gas-alarm replace",
    ]);
  });
});

describe("a thing that is only where something else is", () => {
  it.each([
    [
      "there's a soft spot in the floor of the slide over by the couch and the microwave won't come on at all",
      ["fault slide-floor", "fault microwave"],
    ],
    ["the awning arm is bent over by the ladder and the step squeaks", ["fault awning", "fault entry-step"]],
    ["the smoke alarm and the gas alarm both chirp", ["fault smoke-alarm", "fault gas-alarm"]],
  ])("has no fault of its own: %s", (text, records) => {
    expect(told(text)).toEqual(records);
  });

  it.fails("is not taken for all that follows where no verb stands between", () => {
    const text = "awning arm bent over by the ladder and the step squeaks";
    expect(told(text)).toEqual(["fault awning", "fault entry-step"]);
  });
});
