import { read } from "../../../../nlp/read/index.ts";
import { OLDER, thingsIn } from "../../../../nlp/understand/older.ts";
import { EMPTY_SCENE, type Scene, type Shown } from "../../../../shared/memory/scene.ts";
import type { Moment } from "../../../../shared/reading.ts";
import type { RecordFields } from "../../../../shared/record.ts";
import { type Afterwards, hemisphereOf, zoneOf } from "../../../gold/corrections.ts";
import { asksOf, type Line } from "./asked-for.ts";
import type { KnownMessage, MessageClass } from "./known.ts";

/** A record and the note that told it. */
export type ToldOnce = { readonly fields: RecordFields; readonly words: string };

const MINUTE_MS = 60_000;
const MOMENT: Moment = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
/** How many minutes ago something else was told, in turn: nothing, just now, a day, long; most often just now. */
const AGES = [2, null, 2, 1500, null, 2, 30_000];
/** As many records as are known when a message comes by itself. */
const KNOWN = 9;
const ALIKE = 2;

/** What a message is heard against where these were told, the newest first, and the first of them so many minutes ago. */
const against = (
  text: string,
  moment: Moment,
  all: readonly ToldOnce[],
  minutes: number,
): { readonly scene: Scene; readonly told: readonly Shown[] } => {
  const told = all.map((each, at): Shown => ({ ...each, id: all.length - at }));
  const [first] = told;
  if (first === undefined) return { scene: EMPTY_SCENE, told };
  const at = new Date(Date.parse(moment.said) - minutes * MINUTE_MS).toISOString();
  const showing = { at, of: "note", records: [first], usage: [] } as const;
  const things = thingsIn(text, moment);
  const older = told.filter(({ fields }, nth) => nth < OLDER.latest || things.includes(fields.component));
  return { scene: { ...EMPTY_SCENE, last: showing, shown: showing, older }, told };
};

const momentAt = (at: string): Moment => ({ said: at, zone: zoneOf(at), hemisphere: hemisphereOf(at) });

/** The first record of the note that something was said after; undefined where the note tells none. */
export const toldBefore = ({ before, at }: Afterwards): ToldOnce | undefined => {
  const fields = read(before, momentAt(at)).records[0]?.fields;
  return fields === undefined ? undefined : { fields, words: before };
};

const someOf = (others: readonly ToldOnce[], from: number): ToldOnce[] =>
  Array.from({ length: KNOWN }, (_, nth) => others[(from * 7 + nth * 31) % others.length]).flatMap(
    (each) => each ?? [],
  );

/** What was said a minute after a note, as on a rig of which more is known. */
export const saidAfter = (line: Afterwards, others: readonly ToldOnce[], from: number): KnownMessage => {
  const { at, text, is, fixed } = line;
  const moment = momentAt(at);
  const before = toldBefore(line);
  return {
    text,
    moment,
    ...against(text, moment, before === undefined ? [] : [before, ...someOf(others, from)], 1),
    is: is === "correction" || is === "removal" ? is : "",
    ...(fixed === undefined ? {} : { fixed }),
  };
};

/** Records of things that a message names. */
const aboutAlike = (text: string, others: readonly ToldOnce[], from: number): ToldOnce[] => {
  const things = thingsIn(text, MOMENT);
  const alike = others.filter(({ fields }) => things.includes(fields.component));
  return Array.from(
    { length: ALIKE },
    (_, nth) => alike[(from + nth * 5) % Math.max(1, alike.length)],
  ).flatMap((each) => each ?? []);
};

const namesNothing = ({ component, action, where }: Line): boolean =>
  component === undefined && action === undefined && where === undefined;

/** Messages by themselves, each as if something had been told a while before: every other time of the same thing. */
export const byThemselves = (
  lines: readonly Line[],
  is: MessageClass,
  others: readonly ToldOnce[],
): KnownMessage[] =>
  lines.map((line, at) => {
    const { text } = line;
    const asks = asksOf(line);
    const minutes = AGES[at % AGES.length] ?? null;
    const any = someOf(others, at);
    const alike = aboutAlike(text, others, at);
    const all = at % 2 === 0 ? [...alike, ...any] : [...any, ...alike];
    return {
      text,
      moment: MOMENT,
      ...against(text, MOMENT, minutes === null ? [] : all, minutes ?? 0),
      is,
      ...(asks === undefined ? {} : { asks, ofAll: namesNothing(line) }),
      ...(is !== "question" || line.component === undefined ? {} : { component: line.component }),
    };
  });
