import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import type { Moment } from "../../../../shared/reading.ts";
import type { RecordFields } from "../../../../shared/record.ts";
import { ACTIONS, COMPONENTS, OUTCOMES } from "../../../../shared/vocabulary.ts";
import verdicts from "../verdicts.json" with { type: "json" };
import works from "./works.json" with { type: "json" };

/** A record that a careful listener wrote down, with the words of the note that tell it. */
export type KnownRecord = Omit<RecordFields, "date"> & {
  readonly anchor: string;
  /** The words that name the thing there; absent where nobody marked them. */
  readonly named?: string;
  /** Absent where nobody worked it out. */
  readonly date?: RecordFields["date"];
};
export type KnownNote = Moment & {
  readonly id: string;
  readonly style: string;
  readonly text: string;
  readonly records: readonly KnownRecord[];
  readonly usage: readonly { readonly count?: number; readonly unit: string }[];
  /** The file it stands in. */
  readonly set: string;
};

const OURS = fileURLToPath(new URL("../../../gold/", import.meta.url));
const GIVEN = fileURLToPath(new URL("../../../../../shared/gold/", import.meta.url));

/** Never learnt from: what is measured on them holds for words that nobody tuned to. */
export const KEPT_OUT: ReadonlySet<string> = new Set([
  "notes-10",
  "notes-12",
  "notes-31",
  "notes-60",
  "notes-61",
  "turns-39",
  "turns-48",
  "turns-56",
  "turns-57",
  "turns-58",
  "turns-81",
  "turns-88",
  "turns-99",
  "turns-105",
  "turns-116",
  "turns-123",
]);

/** More is taken for the place in these; where things are is not learnt from them. */
export const PLACED_LOOSELY: ReadonlySet<string> = new Set([
  ...["52", "53", "54", "62", "63", "64", "65", "66", "67"].map((nth) => `notes-${nth}`),
  ...["37", "38", "40", "41", "42", "43", "44", "45", "46", "47"].map((nth) => `turns-${nth}`),
]);

type Line = Omit<KnownNote, "set" | "records"> & {
  readonly records: (Omit<KnownRecord, "anchor"> & { readonly anchor?: string })[];
};
type Anchors = { readonly id: string; readonly anchors: readonly { readonly anchor: string }[] };

const linesOf = <T>(path: string): T[] =>
  existsSync(path)
    ? readFileSync(path, "utf8")
        .split("\n")
        .filter((line) => line.trim() !== "")
        .map((line) => JSON.parse(line) as T)
    : [];

const WORK = z.object({ component: z.enum(COMPONENTS), action: z.enum(ACTIONS) });
const NOTHING_TOLD = {
  where: null,
  materials: [],
  exposure: [],
  cost: null,
  fault: null,
  due: null,
};
const MOMENT: Moment = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
const STRIDE = 5;

/** Short notes of one piece of work and how it came out, in many people's words. */
const toldVerdicts = (): KnownNote[] =>
  OUTCOMES.flatMap((outcome) =>
    verdicts[outcome].flatMap((said, at): KnownNote[] => {
      const work = works[(at * STRIDE) % works.length];
      if (work === undefined) return [];
      const { component, action } = WORK.parse(work);
      const record = { ...NOTHING_TOLD, kind: "repair" as const, component, action, outcome };
      return [
        {
          ...MOMENT,
          id: `${outcome}-${String(at)}`,
          style: "typed",
          text: `${work.text}. ${said}.`,
          records: [{ ...record, anchor: work.anchor }],
          usage: [],
          set: "verdicts",
        },
      ];
    }),
  );

/** All notes with known records, ours and, where they lie beside the repository, the given ones. */
export const knownNotes = (): KnownNote[] => {
  const anchors = new Map(
    linesOf<Anchors>(join(OURS, "anchors.jsonl")).map((each) => [each.id, each.anchors]),
  );
  const files = [
    ...["dev", "dev2"].map((name) => [name, join(GIVEN, `${name}.jsonl`)] as const),
    ["short", join(OURS, "short.jsonl")] as const,
    ...readdirSync(OURS)
      .filter((name) => /^(?:notes|turns)-\d+\.jsonl$/.test(name))
      .sort()
      .map((name) => [name.replace(".jsonl", ""), join(OURS, name)] as const),
  ];
  const told = files.flatMap(([set, path]) =>
    linesOf<Line>(path).map(
      (note): KnownNote => ({
        ...note,
        set,
        records: note.records.map((record, at) => ({
          ...record,
          anchor: record.anchor ?? anchors.get(note.id)?.[at]?.anchor ?? "",
        })),
      }),
    ),
  );
  return [...told, ...toldVerdicts()];
};
