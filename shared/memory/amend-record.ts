import type { Temporal } from "temporal-polyfill";
import { capital } from "../capital.ts";
import type { History, KeptRecord } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { Edtf, Field, RecordFields } from "../record.ts";
import { changedDate, isToCome } from "./amend-date.ts";
import type { Amend, Amendment } from "./amendment.ts";
import type { Change, DateChange } from "./correction.ts";
import { compareMaterials, isSameHead } from "./materials.ts";
import { comparePlaces, placeCorrected } from "./place.ts";
import { plainWords, shareAny } from "./words.ts";
import { isOther, opposite } from "./work-again.ts";

export type Bench = {
  readonly history: History;
  readonly hemisphere: Hemisphere;
  readonly today: Temporal.PlainDate;
};

type Why = Extract<Amendment, { is: "impossible" }>["why"];
/** What one change does to one record, or why it can't. */
export type Outcome = readonly Amend[] | Why;

const setField = <F extends Field>(record: KeptRecord, field: F, to: RecordFields[F]): readonly Amend[] => {
  const from = record.fields[field];
  if (JSON.stringify(from) === JSON.stringify(to)) return [];
  return [{ do: "set", record: record.id, field, from, to } as Amend];
};

/** "The other side" is the opposite of the place on record. */
const settledPlace = ({ fields }: KeptRecord, to: Partial<RecordFields>): Partial<RecordFields> => {
  if (to.where == null) return to;
  const where = isOther(to.where) ? opposite(fields.where, to.where) : placeCorrected(fields.where, to.where);
  return { ...to, where };
};

const setFields = (record: KeptRecord, told: Partial<RecordFields>): readonly Amend[] =>
  (Object.keys(told) as Field[]).flatMap((field) => {
    const value = settledPlace(record, told)[field];
    return value === undefined ? [] : setField(record, field, value);
  });

/** "The 28th", said of a record of this month on the 3rd, is that of the month before. */
const notToCome = (date: Edtf, change: DateChange, bench: Bench): Edtf =>
  "dayOfMonth" in change && isToCome(date, bench.today, bench.hemisphere)
    ? (changedDate({ shift: { months: -1 } }, date, bench.hemisphere) ?? date)
    : date;

const setDate = (record: KeptRecord, change: Extract<Change, { change: "date" }>, bench: Bench): Outcome => {
  const field = record.fields.kind === "todo" ? "due" : "date";
  const told = changedDate(change.to, record.fields[field], bench.hemisphere);
  if (told === null) return "not-found";
  const to = field === "date" ? notToCome(told, change.to, bench) : told;
  if (field === "date" && isToCome(to, bench.today, bench.hemisphere)) return "in-the-future";
  return setField(record, field, to);
};

/** Those on record that a word for stuff may stand for: "bolts" for the steel bolt, else whatever shares a word with it. */
const stuffCalled = (kept: readonly string[], name: string): readonly string[] => {
  const byHead = kept.filter((each) => isSameHead(name, each));
  return byHead.length > 0 ? byHead : kept.filter((each) => compareMaterials([name], [each]) === "same");
};

/** What goes out for what is told instead: what is denied, else what it is another kind of, else all. */
const goneStuff = (kept: readonly string[], { drop, add }: StuffChange): readonly string[] => {
  const denied = drop.flatMap((name) => stuffCalled(kept, name));
  if (denied.length > 0) return denied;
  const another = kept.filter((each) => add.some((name) => isSameHead(name, each)));
  return another.length > 0 ? another : kept;
};

type StuffChange = Extract<Change, { change: "materials" }>;

const setMaterials = (record: KeptRecord, change: StuffChange): readonly Amend[] => {
  const { materials } = record.fields;
  const gone = change.how === "also" ? [] : goneStuff(materials, change);
  const left = materials.filter((material) => !gone.includes(material));
  return setField(record, "materials", [...new Set([...left, ...change.add])]);
};

const alike = (record: KeptRecord, other: KeptRecord): number =>
  (compareMaterials(record.fields.materials, other.fields.materials) === "same" ? 2 : 0) +
  (record.fields.action === other.fields.action ? 1 : 0);

/** The record before it that a retelling is about: the newest on the same thing in no other place. */
const sameBefore = (record: KeptRecord, history: History): KeptRecord | undefined =>
  history
    .records({ components: [record.fields.component], limit: 30 })
    .filter(
      (other) =>
        other.id < record.id && comparePlaces(other.fields.where, record.fields.where) !== "different",
    )
    .sort((a, b) => alike(record, b) - alike(record, a) || b.id - a.id)[0];

const join = (record: KeptRecord, history: History): Outcome => {
  const into = sameBefore(record, history);
  return into === undefined ? "nothing-to-join" : [{ do: "join", record: record.id, into: into.id }];
};

const shares = (one: string, other: string): boolean => shareAny(plainWords(one), new Set(plainWords(other)));

/** "Davo", of one word that stands for somebody. */
const sayName = (who: string): string => (who.includes(" ") ? who : capital(who));

/** Puts the words where the denied ones stand: for whoever did it, among the materials, in the place, or in the fault. */
const setPhrase = (record: KeptRecord, { to, instead }: Extract<Change, { change: "phrase" }>): Outcome => {
  const { materials, where, fault } = record.fields;
  if (record.doneBy !== null && shares(record.doneBy, instead))
    return [{ do: "done-by", record: record.id, from: record.doneBy, to: sayName(to) }];
  const at = materials.findIndex((material) => shares(material, instead));
  if (at >= 0)
    return setField(
      record,
      "materials",
      materials.map((kept, index) => (index === at ? to : kept)),
    );
  if (where !== null && shares(where, instead)) return setField(record, "where", to);
  if (fault !== null && shares(fault, instead)) return setField(record, "fault", to);
  return record.fields.kind === "repair" ? setField(record, "materials", [...materials, to]) : "not-found";
};

/** What one change does to one record. Numbers are not for here: they may be use. */
export const amendRecord = (record: KeptRecord, change: Change, bench: Bench): Outcome => {
  switch (change.change) {
    case "fields":
      return setFields(record, change.to);
    case "date":
      return setDate(record, change, bench);
    case "materials":
      return setMaterials(record, change);
    case "done-by":
      return record.doneBy === change.to
        ? []
        : [{ do: "done-by", record: record.id, from: record.doneBy, to: change.to }];
    case "remove":
      return [{ do: "remove", record: record.id }];
    case "part":
      return [{ do: "part", record: record.id }];
    case "join":
      return join(record, bench.history);
    case "phrase":
      return setPhrase(record, change);
    case "number":
      return [];
  }
};
