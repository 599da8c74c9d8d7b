import { read } from "../../../nlp/read/index.ts";
import { understand } from "../../../nlp/understand/understand.ts";
import { EMPTY_SCENE, type Scene } from "../../../shared/memory/scene.ts";
import type { Moment } from "../../../shared/reading.ts";

export const MOMENT: Moment = {
  said: "2025-09-16T18:30:00-06:00",
  zone: "America/Denver",
  hemisphere: "north",
};

/** What was just told and shown. */
export const after = (note: string): Scene => {
  const records = read(note, MOMENT).records.map(({ fields }, at) => ({ id: at + 1, fields }));
  const showing = { at: MOMENT.said, of: "note" as const, records, usage: [] };
  return { ...EMPTY_SCENE, last: showing, shown: showing };
};
export const meant = (note: string, text: string) => understand(text, MOMENT, after(note));

/** What a message puts right in what a note told, as text, to look for values in. */
export const putRightBy = (note: string, text: string): string => JSON.stringify(meant(note, text));
