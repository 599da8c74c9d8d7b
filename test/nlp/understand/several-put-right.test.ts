import { describe, expect, it } from "vitest";
import { LEARNT_TALK } from "../../../nlp/judges/talk.ts";
import { read } from "../../../nlp/read/index.ts";
import { meantIn } from "../../../nlp/understand/lately.ts";
import { understand } from "../../../nlp/understand/understand.ts";
import { EMPTY_SCENE, type Scene, type Shown } from "../../../shared/memory/scene.ts";
import type { Moment } from "../../../shared/reading.ts";

const NOW: Moment = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
const BEFORE: Moment = { ...NOW, said: "2025-06-10T18:30:00-06:00" };

const told = (note: string, moment: Moment, from: number): readonly Shown[] =>
  read(note, moment).records.map(({ fields }, at) => ({ id: from + at, fields, words: note }));

/** What was just told, and what was told months before. */
const sceneOf = (note: string, older: string | null = null): Scene => {
  const past = older === null ? [] : told(older, BEFORE, 1);
  const records = told(note, NOW, past.length + 1);
  const showing = { at: NOW.said, of: "note" as const, records, usage: [] };
  return { ...EMPTY_SCENE, last: showing, shown: showing, older: [...records, ...past] };
};

const corrections = (scene: Scene, text: string) => {
  const said = understand(text, NOW, scene);
  return said.is === "correct" ? [said.correction, ...(said.also ?? [])] : [];
};

describe("several records told at once", () => {
  it("are each put right by what stands beside their names", () => {
    const scene = sceneOf(
      "new water pump in today, 119 dollars. replaced the furnace igniter too, 40 dollars",
    );
    const found = corrections(scene, "other way round, the pump was 40 and the furnace was 119");
    expect(found.map(({ target, changes }) => [target, changes])).toEqual([
      [{ by: "record", record: 1 }, [{ change: "fields", to: { cost: 40 } }]],
      [{ by: "record", record: 2 }, [{ change: "fields", to: { cost: 119 } }]],
    ]);
  });

  it("are each given to whoever did them", () => {
    const scene = sceneOf("neil replaced the water pump today. hank replaced the vent fan today");
    const found = corrections(scene, "no it was hank who did the pump and neil who did the fan");
    expect(found.map(({ changes }) => changes)).toEqual([
      [{ change: "done-by", to: "Hank" }],
      [{ change: "done-by", to: "Neil" }],
    ]);
  });
});

describe("the record whose sum is told to be the wrong one", () => {
  it("is meant, though another seems likelier", () => {
    const scene = sceneOf("greased the hitch today", "fitted a new breakaway switch today, 26 dollars");
    const lastOfAll = { ...LEARNT_TALK, which: () => [1, 0] };
    const found = (text: string) => meantIn(lastOfAll, text, NOW, scene)?.shown.fields.component;
    expect(found("that gizmo with the cable was 36 not 26")).toBe("breakaway-switch");
    expect(found("that gizmo with the cable was 36")).toBe("hitch");
  });
});

const changed = (note: string, text: string): string => JSON.stringify(corrections(sceneOf(note), text));

describe("what is told in place of what is on record", () => {
  it("is stuff where stuff is denied, though a thing goes by that name", () => {
    const said = changed(
      "put a new catch on the kitchen cabinet, 6 dollars",
      "it wasnt a catch come to think of it it was a magnet i put on",
    );
    expect(said).toContain('"add":["magnet"]');
    expect(said).not.toContain('"component"');
  });

  it("is no other thing where the note told of that part", () => {
    const said = changed(
      "the toilet flush was sticking so i cleaned the valve",
      "the valve wasn't cleaned, i put a new one in. 21 dollars",
    );
    expect(said).toContain('"cost":21');
    expect(said).not.toContain('"component"');
  });

  it("is whoever did it, though somebody never touched it", () => {
    const said = changed(
      "sam put a new brake magnet on today, 38 dollars",
      "sam says he never laid a hand on that magnet, it was his cousin done it",
    );
    expect(said).toContain('"done-by"');
    expect(said).not.toContain('"remove"');
  });
});

describe("a question cut short", () => {
  it("moves the time of the one before", () => {
    const asked = understand("what did it all cost in 2024", NOW, EMPTY_SCENE);
    const query = asked.is === "ask" ? asked.query : null;
    const scene = { ...EMPTY_SCENE, asked: query, askedEarlier: query };
    expect(understand("And the year before?", NOW, scene)).toMatchObject({
      is: "ask",
      query: { ask: "cost", period: { from: "2023-01-01", to: "2024-01-01" } },
    });
  });
});

describe("work told twice", () => {
  it.each([
    "hang on, that's the same tire i gave you last week, not another one",
    "that's the very same one i told you about, not a new one",
  ])("is put together: %s", (text) => {
    expect(changed("new tire on the right side, 80 dollars", text)).toContain('"change":"join"');
  });
});
