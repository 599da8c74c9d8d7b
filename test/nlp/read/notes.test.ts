import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import type { RecordFields } from "../../../shared/record.ts";
import monologues from "./own-monologues.json" with { type: "json" };
import notes from "./own-notes.json" with { type: "json" };
import voices from "./own-voices.json" with { type: "json" };
import phenomena from "./phenomena.json" with { type: "json" };
import quiet from "./quiet.json" with { type: "json" };

/** Tuesday, 16 September 2025, in the evening. */
const MOMENT = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

type Told = { readonly text: string; readonly expect: readonly string[]; readonly gap?: boolean };
/** "kind component action outcome", with | for either and * for any. */
const fits = (wanted: string, fields: RecordFields): boolean => {
  const got = [fields.kind, fields.component, fields.action ?? "-", fields.outcome ?? "-"];
  return wanted.split(" ").every((part, at) => part === "*" || part.split("|").includes(got[at] ?? ""));
};
const isRead = ({ text, expect: wanted }: Told): boolean => {
  const { records } = read(text, MOMENT);
  return (
    records.length === wanted.length &&
    wanted.every((each, at) => records[at] !== undefined && fits(each, records[at].fields))
  );
};

describe.each([
  ["short notes", notes as readonly Told[]],
  ["longer notes", monologues as readonly Told[]],
  ["notes", voices as readonly Told[]],
])("%s in many voices", (_, all) => {
  it.each(all.filter((told) => told.gap !== true))("$text", (told) => {
    expect(isRead(told)).toBe(true);
  });

  it("are mostly read, known gaps included", () => {
    expect(all.filter(isRead).length / all.length).toBeGreaterThan(0.55);
  });
});

describe("talk that holds no record", () => {
  it.each(
    (quiet as readonly { readonly text: string; readonly gap?: boolean }[]).filter(({ gap }) => gap !== true),
  )("$text", ({ text }) => {
    expect(read(text, MOMENT).records).toEqual([]);
  });
});

describe("what a note can do", () => {
  it.each(phenomena)("$about: $text", ({ text, records, usage, brands, doneBy }) => {
    const reading = read(text, MOMENT);
    expect(reading.records.map((draft) => draft.fields)).toMatchObject(records);
    expect(reading.records).toHaveLength(records.length);
    if (usage !== undefined) expect(reading.usage.map((draft) => draft.usage)).toEqual(usage);
    if (brands !== undefined) expect(reading.records[0]?.brands).toEqual(brands);
    if (doneBy !== undefined) expect(reading.records[0]?.doneBy).toBe(doneBy);
  });
});

describe("every field says what it rests on", () => {
  it("with spans inside the text and a sureness between 0 and 1", () => {
    const text =
      "In June I resealed the bathroom skylight with lap sealant, $14, and it has been dry through two storms.";
    const [draft] = read(text, MOMENT).records;
    const evidence = Object.values(draft?.evidence ?? {});
    expect(evidence.length).toBeGreaterThan(6);
    for (const { spans, sure } of evidence) {
      expect(sure).toBeGreaterThan(0);
      expect(sure).toBeLessThan(1);
      for (const { start, end } of spans) expect(text.slice(start, end).trim()).not.toBe("");
    }
    expect(draft?.evidence.date?.spans.map(({ start, end }) => text.slice(start, end))).toEqual(["In June"]);
  });
});
