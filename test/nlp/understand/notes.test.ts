import { describe, expect, it } from "vitest";
import { understand } from "../../../nlp/understand/understand.ts";
import { EMPTY_SCENE, type Scene } from "../../../shared/memory/scene.ts";
import type { Moment } from "../../../shared/reading.ts";
import type { RecordFields } from "../../../shared/record.ts";
import { linesOf } from "../lines.ts";

const MOMENT: Moment = { said: "2025-08-02T14:30:00-06:00", zone: "America/Denver", hemisphere: "north" };

const SEAM: RecordFields = {
  kind: "repair",
  component: "roof-seam",
  where: null,
  action: "seal",
  materials: ["butyl tape"],
  date: "2025-08-01",
  outcome: "untested",
  exposure: [],
  cost: 20,
  fault: null,
  due: null,
};

const JUST_TOLD: Scene = {
  ...EMPTY_SCENE,
  last: { at: MOMENT.said, of: "note", records: [{ id: 1, fields: SEAM }], usage: [] },
};

const NUDGED: Scene = {
  ...EMPTY_SCENE,
  shown: { at: MOMENT.said, of: "nudge", records: [{ id: 1, fields: SEAM }], usage: [] },
  pending: { is: "nudge", records: [1] },
};

const lines = linesOf(new URL("notes.txt", import.meta.url));

/** A splint on the awning, told of two days before. */
const SPLINTED: Scene = {
  ...EMPTY_SCENE,
  last: {
    at: "2025-07-31T14:30:00-06:00",
    of: "note",
    records: [
      {
        id: 1,
        fields: {
          ...SEAM,
          component: "awning",
          action: "patch",
          materials: ["hose clamp"],
          date: "2025-07-31",
        },
      },
    ],
    usage: [],
  },
};

describe("notes that look like something else", () => {
  it.each(lines)("tells out of the blue: %s", (text) => {
    expect(understand(text, MOMENT, EMPTY_SCENE).is).toBe("tell");
  });
  it.each(lines)("tells after another note: %s", (text) => {
    expect(understand(text, MOMENT, JUST_TOLD).is).toBe("tell");
  });
});

describe("what is said of a thing without asking", () => {
  it.each([
    ["splint's holding after another blow", "tell"],
    ["is the splint holding after that blow", "ask"],
    ["splint holding?", "ask"],
  ])("%s: %s", (text, is) => {
    expect(understand(text, MOMENT, SPLINTED).is).toBe(is);
  });
});

describe("answers to a nudge", () => {
  it.each([
    ["still good", "holding"],
    ["yep dry as a bone", "holding"],
    ["no leaks at all", "holding"],
    ["came back", "failed"],
    ["it's dripping again", "failed"],
    ["not holding any more", "failed"],
    ["mostly, a bit damp", "partly"],
    ["sort of", "partly"],
    ["later", "later"],
    ["haven't looked yet", "later"],
    ["ask me next week", "later"],
  ])("%s", (text, outcome) => {
    expect(understand(text, MOMENT, NUDGED)).toMatchObject({ is: "verdict", outcome, records: [1] });
  });
  it.each([
    "greased the bearings today, good as new",
    "pretty morning out here, three nights at this spot now",
    "the fridge is still good on gas",
    "what did I use on the gutter, was it any good",
    "resealed it with butyl tape",
  ])("is none: %s", (text) => {
    expect(understand(text, MOMENT, NUDGED).is).not.toBe("verdict");
  });
});

describe("a note told behind a correction", () => {
  it("is kept as one", () => {
    const intent = understand(
      "no it was yesterday. and i also changed the fridge fan, 30 bucks",
      MOMENT,
      JUST_TOLD,
    );
    expect(intent.is).toBe("correct");
    expect(intent.rest).toContain("fridge fan");
  });
});
