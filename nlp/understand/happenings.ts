import { daySpan } from "../../shared/edtf.ts";
import { HAPPENINGS, type Happening } from "../../shared/outlook/happening.ts";
import type { Moment } from "../../shared/reading.ts";
import { plain } from "../correct/pieces.ts";
import { findTimes } from "../time/index.ts";
import table from "./happenings.json" with { type: "json" };

/** Something that happened to the rig, with its day. */
export type Happened = { readonly what: Happening; readonly day: string };

const anyOf = (phrases: readonly string[]): RegExp =>
  new RegExp(`\\b(?:${phrases.map((phrase) => phrase.replaceAll("* ", "(?:\\w+ ){0,3}?")).join("|")})\\b`);

const RULES: readonly { readonly what: Happening; readonly when: RegExp; readonly not: RegExp }[] = [
  ...HAPPENINGS.filter((what) => what !== "frost").map((what) => ({
    what,
    when: anyOf(table.happenings[what]),
    not: anyOf(table.not),
  })),
  { what: "frost", when: anyOf(table.frost), not: anyOf(table.notFrost) },
];

const CLAUSES = /[.;!?\n]+(?=\s|$)|,\s|\s(?:but|so|and then|then)\s/;

const isTold = (words: string, { when, not }: (typeof RULES)[number]): boolean => {
  const at = when.exec(words)?.index;
  return at !== undefined && !not.test(words.slice(0, at));
};

/** The last day that a clause speaks of, not after today; today when it speaks of none. */
const dayIn = (clause: string, moment: Moment): string => {
  const today = moment.said.slice(0, 10);
  const past = findTimes(clause, moment, { prefer: "past" }).find(
    ({ sure, role, direction }) => sure >= 0.5 && role !== "since" && direction !== "future",
  );
  const span = past === undefined ? undefined : daySpan(past.edtf, moment.hemisphere);
  const last = span?.to.subtract({ days: 1 }).toString() ?? today;
  const [earlier = today] = [last, today].toSorted();
  return earlier;
};

/** What a note says has happened: hail, a gale, a kerb, out of storage. Each once, at its latest. */
export const happeningsIn = (text: string, moment: Moment): readonly Happened[] => {
  const latest = new Map<Happening, string>();
  for (const clause of text.split(CLAUSES)) {
    const words = plain(clause);
    for (const rule of RULES) {
      if (!isTold(words, rule)) continue;
      const day = dayIn(clause, moment);
      if (day > (latest.get(rule.what) ?? "")) latest.set(rule.what, day);
    }
  }
  return [...latest].map(([what, day]) => ({ what, day }));
};
