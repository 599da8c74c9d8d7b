import { singular } from "../../../../nlp/lexicon/tokens.ts";
import { describingSigns } from "../../../../nlp/read/described.ts";
import { readBy } from "../../../../nlp/read/index.ts";
import type { Judges } from "../../../../nlp/read/judges.ts";
import type { Made } from "../../../../nlp/read/made.ts";
import type { MaterialChoice } from "../../../../nlp/read/material-signs.ts";
import type { Scan, Stretch } from "../../../../nlp/read/scan.ts";
import type { Setting } from "../../../../nlp/read/setting.ts";
import type { Telling } from "../../../../nlp/read/tellings.ts";
import type { Kind } from "../../../../shared/vocabulary.ts";
import { type Anchored, anchoredIn, tellers } from "./anchored.ts";
import type { Choice, Example } from "./linear.ts";
import { type KnownNote, type KnownRecord, PLACED_LOOSELY } from "./notes.ts";

/** What the judges can learn from one or several notes. */
export type Lessons = {
  readonly tells: Example[];
  readonly kind: Example[];
  readonly aim: Choice[];
  readonly described: Example[];
  readonly kept: Example[];
  readonly date: Choice[];
  readonly where: Choice[];
  readonly exposure: Example[];
  readonly usage: Example[];
  readonly cost: Example[];
  readonly material: Example[];
  readonly action: Example[];
  readonly outcome: Example[];
};

type Seen = { readonly telling: Telling; readonly signs: readonly string[]; readonly setting: Setting };

const NOTHING: Readonly<Record<Kind, number>> = { repair: 0, check: 0, fault: 0, todo: 0 };
/** Answers nothing, so that a read only shows what the judges are asked. */
export const MUTE: Judges = {
  tells: () => 0,
  kind: () => NOTHING,
  aim: () => [],
  described: () => new Map(),
  kept: () => 0,
  date: () => [],
  where: () => [],
  exposure: (_, __, choice) => Number(choice.ruled),
  usage: (_, choice) => Number(choice.ruled),
  cost: (_, __, choice) => Number(choice.ruled),
  material: () => 0,
  action: (_, ruled) => ruled,
  outcome: (_, made) => ({ outcome: made.judged?.outcome ?? "untested", sure: 0 }),
};

const tellingsSeen = (note: KnownNote): Seen[] => {
  const seen: Seen[] = [];
  const show: Judges = {
    ...MUTE,
    kind: (signs, telling, setting) => {
      seen.push({ signs, telling, setting });
      return NOTHING;
    },
  };
  readBy(show, note.text, note);
  return seen;
};

/** What the judges look at, once for each note that has any place to judge. */
export const settingsSeen = (note: KnownNote): Setting[] => {
  const [first] = tellingsSeen(note);
  return first === undefined ? [] : [first.setting];
};

/** How well a place fits the words in which a record is told; 0 for not at all. */
const fitness = ({ telling }: Seen, { from, to, record }: Anchored): number => {
  const { deed, at } = telling;
  const inside = at >= from && at < to;
  const overlap = Math.min(telling.to, to) - Math.max(telling.from, from);
  if (deed !== undefined) {
    if (inside)
      return (
        3 -
        (deed.sense === "prep" ? 1 : 0) -
        (deed.status === "talk" ? 0.5 : 0) +
        (record.kind === "todo" && deed.status === "plan" ? 0.3 : 0)
      );
    return overlap > 0 ? 1.5 : at >= from - 1 && at <= to ? 1 : 0;
  }
  if (inside) return 2.2;
  if (at >= from - 3 && at < to + 3) return 1 - Math.min(Math.abs(at - from), Math.abs(at - to + 1)) * 0.2;
  return overlap >= Math.min(2, to - from) ? 0.3 : 0;
};

/** The place at which each record is told, and the places that also touch its words. */
const placed = (note: KnownNote, seen: readonly Seen[]) => {
  const anchored = anchoredIn(note, seen[0]?.setting.scan.tokens ?? []);
  const record = new Map<Seen, KnownRecord>();
  const touched = new Set<Seen>();
  for (const anchor of anchored) {
    let [best, most]: [Seen | undefined, number] = [undefined, 0];
    for (const each of seen) {
      const fit = fitness(each, anchor);
      if (fit > 0) touched.add(each);
      if (fit > most && record.get(each)?.component !== anchor.record.component) [best, most] = [each, fit];
    }
    if (best !== undefined && !record.has(best)) record.set(best, anchor.record);
  }
  return { record, touched };
};

const wordsOf = (name: string): Set<string> => new Set(name.split(/[^a-z0-9]+/).map(singular));
/** How like two names of a material are, from 0 to 1; 0 when they share less than half the words of the shorter one. */
const likeness = (one: string, other: string): number => {
  const [a, b] = [wordsOf(one.toLowerCase()), wordsOf(other.toLowerCase())];
  const both = [...a].filter((word) => b.has(word)).length;
  return both < Math.min(a.size, b.size) / 2 ? 0 : both / Math.max(a.size, b.size);
};

/** Which of the choices each known material was told as. */
const materialsTold = (known: readonly string[], choices: readonly MaterialChoice[]): Set<MaterialChoice> => {
  const told = new Set<MaterialChoice>();
  for (const name of known) {
    const free = choices.filter((choice) => !told.has(choice));
    const best = free.reduce<MaterialChoice | undefined>(
      (top, choice) =>
        likeness(name, choice.name) > (top === undefined ? 0 : likeness(name, top.name)) ? choice : top,
      undefined,
    );
    if (best !== undefined) told.add(best);
  }
  return told;
};

/** What is said around a place of a thing, but for its names. */
const descriptionOf = ({ setting, telling }: Seen, { component }: KnownRecord): Example => {
  const own = new Set<number>();
  for (const { id, guessed, from, to } of setting.named)
    if (id === component && guessed === undefined) for (let at = from; at < to; at++) own.add(at);
  return { signs: describingSigns(setting.scan.tokens, telling.at, (at) => own.has(at)), right: component };
};

const LEADING = new Set(["a", "an", "the", "of", "on", "in", "at", "and", "to"]);
/** Whether a phrase is where a known record's thing is: nowhere told, or told with a word of it. */
const isToldBy = (known: string | null, at: Stretch | undefined, tokens: Scan["tokens"]): boolean => {
  if (known === null || at === undefined) return known === null && at === undefined;
  const telling = wordsOf(known.toLowerCase().replaceAll("grey", "gray"));
  return tokens.slice(at.from, at.to).some(({ norm }) => !LEADING.has(norm) && telling.has(singular(norm)));
};

const CENT = 0.01;

/** There are fewer notes that tell nothing, and each counts as often as this. */
const QUIET_OFTEN = 3;

/** Short notes show one thing each, and count as often as this. */
const OFTEN = 3;

/** What a note with known records teaches. */
export const lessonsOf = (note: KnownNote, described: Judges["described"] = () => new Map()): Lessons => {
  const lessons: Lessons = {
    tells: [],
    kind: [],
    aim: [],
    described: [],
    kept: [],
    date: [],
    where: [],
    exposure: [],
    usage: [],
    cost: [],
    material: [],
    action: [],
    outcome: [],
  };
  const seen = tellingsSeen(note);
  const { record, touched } = placed(note, seen);
  const scanned = seen[0]?.setting.scan.tokens ?? [];
  const anchored = anchoredIn(note, scanned);
  for (const each of seen) {
    const known = record.get(each);
    if (known === undefined && touched.has(each) && each.telling.deed !== undefined) continue;
    lessons.kind.push({ signs: each.signs, right: known?.kind ?? "" });
    if (known !== undefined) lessons.described.push(descriptionOf(each, known));
  }
  const at = new Map(
    [...record].map(([{ telling }, known]) => [
      `${String(telling.at)} ${String(telling.deed !== undefined)}`,
      known,
    ]),
  );
  const knownAt = (place: number, known: boolean) => at.get(`${String(place)} ${String(known)}`);
  const recordOf = (made: Made): KnownRecord | undefined => {
    const places =
      made.event?.deeds.map((deed) => knownAt(deed.at, deed.source !== "told~")) ??
      [...record].map(([{ telling }, known]) =>
        telling.at >= made.span.from && telling.at < made.span.to ? known : undefined,
      );
    return places.find((each) => each?.kind === made.kind && each.component === made.told.topic.component);
  };
  const often = note.set === "short" ? OFTEN : 1;
  /** Short notes name materials, or nobody wrote them down. */
  const isShort = note.set === "short" || note.set === "verdicts";
  const used = [...note.usage];
  const of = (telling: Telling) => knownAt(telling.at, telling.deed !== undefined);
  const teach: Judges = {
    tells: (signs) => {
      const right = note.records.length > 0 ? "tells" : "";
      for (let time = 0; time < (right === "" ? QUIET_OFTEN : 1); time++)
        lessons.tells.push({ signs, right });
      return Number(note.records.length > 0);
    },
    kind: (_, telling) => {
      const known = of(telling);
      return known === undefined ? NOTHING : { ...NOTHING, [known.kind]: 1 };
    },
    described,
    kept: (_, each, all) => Number(tellers(all, anchored).has(each)),
    aim: (signs, telling, aims) => {
      const right = aims.map((ref) => ref.id === of(telling)?.component);
      if (right.includes(true)) lessons.aim.push({ signs, right });
      return right.map(Number);
    },
    action: (signs, ruled, deed) => {
      const known = knownAt(deed.at, deed.source !== "told~");
      if (known === undefined || known.action === null) return ruled;
      lessons.action.push({ signs, right: known.action });
      return known.action;
    },
    date: (signs, made, choices) => {
      const known = recordOf(made);
      const right = choices.map((choice) => known !== undefined && choice.dated.edtf === known.date);
      if (right.includes(true))
        for (let time = 0; time < (note.set === "short" ? OFTEN : 1); time++)
          lessons.date.push({ signs, right });
      return right.map(Number);
    },
    where: (signs, made, choices) => {
      const known = recordOf(made);
      if (known === undefined) return [];
      const right = choices.map(({ at }) => isToldBy(known.where, at, scanned));
      const shows = (known.where !== null || !isShort) && !PLACED_LOOSELY.has(note.set);
      if (right.includes(true) && shows) lessons.where.push({ signs, right });
      return right.map(Number);
    },
    exposure: (signs, made, choice) => {
      const known = recordOf(made);
      if (known === undefined) return Number(choice.ruled);
      const right = known.exposure.some(
        ({ count, unit }) => count === choice.value.count && unit === choice.value.unit,
      );
      if (right || !isShort) lessons.exposure.push({ signs, right: right ? "since" : "" });
      return Number(right);
    },
    usage: (signs, choice) => {
      const right = used.findIndex(({ count, unit }) => count === choice.value && unit === choice.what);
      if (right >= 0) used.splice(right, 1);
      if (!isShort) lessons.usage.push({ signs, right: right < 0 ? "" : "used" });
      return Number(right >= 0);
    },
    cost: (signs, made, choice) => {
      const known = recordOf(made);
      if (known === undefined) return Number(choice.ruled);
      const right = known.cost !== null && Math.abs(known.cost - choice.value) < CENT / 2;
      if (right || !isShort) lessons.cost.push({ signs, right: right ? "paid" : "" });
      return Number(right);
    },
    material: (signs, made, choice, choices) => {
      const known = recordOf(made);
      if (known === undefined) return Number(choice.ruled);
      const right = materialsTold(known.materials, choices).has(choice);
      if (known.materials.length > 0 || !isShort)
        for (let time = 0; time < often; time++) lessons.material.push({ signs, right: right ? "in" : "" });
      return Number(right);
    },
    outcome: (signs, made) => {
      const known = recordOf(made);
      if (known?.outcome != null) lessons.outcome.push({ signs, right: known.outcome });
      return { outcome: made.judged?.outcome ?? "untested", sure: 0 };
    },
  };
  readBy(teach, note.text, note);
  return lessons;
};

export const together = (all: readonly Lessons[]): Lessons => ({
  tells: all.flatMap((each) => each.tells),
  kind: all.flatMap((each) => each.kind),
  aim: all.flatMap((each) => each.aim),
  described: all.flatMap((each) => each.described),
  kept: all.flatMap((each) => each.kept),
  date: all.flatMap((each) => each.date),
  where: all.flatMap((each) => each.where),
  exposure: all.flatMap((each) => each.exposure),
  usage: all.flatMap((each) => each.usage),
  cost: all.flatMap((each) => each.cost),
  material: all.flatMap((each) => each.material),
  action: all.flatMap((each) => each.action),
  outcome: all.flatMap((each) => each.outcome),
});
