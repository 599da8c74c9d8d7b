import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { findNumbers, findTimes, type TimeMention } from "../../../nlp/time/index.ts";
import { daySpan, parseEdtf } from "../../../shared/edtf.ts";
import type { Moment } from "../../../shared/reading.ts";
import { PHRASES } from "./phrases.ts";

const MOMENTS: readonly Moment[] = [
  { said: "2026-05-14T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" },
  { said: "2026-01-31T23:58:00+11:00", zone: "Australia/Melbourne", hemisphere: "south" },
  { said: "2028-02-29T00:05:00+00:00", zone: "Europe/London", hemisphere: "north" },
  { said: "2026-12-31T12:00:00+13:00", zone: "Pacific/Auckland", hemisphere: "south" },
  { said: "2026-03-29T00:59:00Z", zone: "Europe/London", hemisphere: "north" },
];
const PREFERS = ["past", "future"] as const;

/** A small repeatable generator (Park and Miller, 1988). */
const random = (seed: number) => {
  let state = seed;
  return (below: number): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
};
const TEXTS = PHRASES.map(({ text }) => text);
const WORDS = [...new Set(TEXTS.flatMap((text) => text.split(/\s+/u)))];
const pick = (next: (below: number) => number, from: readonly string[]): string =>
  from[next(from.length)] ?? "";
const jumbles = (count: number): readonly string[] => {
  const next = random(7);
  return Array.from({ length: count }, () =>
    Array.from({ length: 1 + next(25) }, () => pick(next, WORDS)).join(" "),
  );
};

const each = (
  texts: readonly string[],
  check: (mention: TimeMention, text: string, moment: Moment) => void,
) => {
  for (const text of texts)
    for (const moment of MOMENTS)
      for (const prefer of PREFERS)
        for (const mention of findTimes(text, moment, { prefer })) check(mention, text, moment);
};
const SOME = [...TEXTS.filter((_, i) => i % 9 === 0), ...jumbles(100)];

describe("whatever is said, wherever and whenever", () => {
  it("every date is EDTF with bounds, and every span lies in the text", () => {
    each(SOME, ({ edtf, span, sure }, text, { hemisphere }) => {
      expect(parseEdtf(edtf).ok, `${text}: ${edtf}`).toBe(true);
      const days = daySpan(edtf, hemisphere);
      expect(days && Temporal.PlainDate.compare(days.from, days.to), `${text}: ${edtf}`).toBe(-1);
      expect(span.start).toBeGreaterThanOrEqual(0);
      expect(span.end).toBeGreaterThan(span.start);
      expect(span.end).toBeLessThanOrEqual(text.length);
      expect(sure).toBeGreaterThan(0);
      expect(sure).toBeLessThan(1);
    });
  });

  it("no two mentions overlap, and they come in order", () => {
    for (const text of SOME)
      for (const moment of MOMENTS) {
        const spans = findTimes(text, moment).map(({ span }) => span);
        for (const [i, span] of spans.entries())
          expect(span.start, text).toBeGreaterThanOrEqual(spans[i - 1]?.end ?? 0);
      }
  });

  it("what is past does not begin after the day of speaking, what is to come does not end before it", () => {
    each(SOME, ({ edtf, direction, role }, text, { hemisphere, said, zone }) => {
      if (role === "after-that") return;
      const today = Temporal.Instant.from(said).toZonedDateTimeISO(zone).toPlainDate();
      const days = daySpan(edtf, hemisphere);
      if (days === undefined) return;
      if (direction === "past")
        expect(Temporal.PlainDate.compare(days.from, today), `${text}: ${edtf}`).not.toBe(1);
      if (direction === "future")
        expect(Temporal.PlainDate.compare(days.to, today), `${text}: ${edtf}`).toBe(1);
    });
  });

  it("where only the preference decides, it decides", () => {
    const kinds = [
      "on friday",
      "in june",
      "in the fall",
      "at christmas",
      "on the 20th",
      "october 30",
      "the first week of august",
    ];
    for (const text of kinds)
      for (const moment of MOMENTS) {
        const today = Temporal.Instant.from(moment.said).toZonedDateTimeISO(moment.zone).toPlainDate();
        const [past, future] = PREFERS.map((prefer) => findTimes(text, moment, { prefer })[0]);
        expect([past?.direction, future?.direction], text).toEqual(["either", "either"]);
        const [before, after] = [past, future].map((one) => one && daySpan(one.edtf, moment.hemisphere));
        expect(before && Temporal.PlainDate.compare(before.from, today)).not.toBe(1);
        expect(after && Temporal.PlainDate.compare(after.to, today)).toBe(1);
      }
  });

  it("reads the same in capitals, without punctuation, and after talk that holds no time", () => {
    const [moment] = MOMENTS;
    if (moment === undefined) return;
    for (const text of TEXTS.filter((_, i) => i % 4 === 0)) {
      if (/\b(?:sat|sun|wed|mar|jan|dec|sep|may)\b|['’.,:]/iu.test(text)) continue;
      const said = (words: string) => findTimes(words, moment).map(({ edtf }) => edtf);
      expect(said(text.toUpperCase()), text).toEqual(said(text));
      expect(said(`the pump was leaking. ${text}`), text).toEqual(said(text));
    }
  });

  it("reads the same in the middle of a sentence as alone", () => {
    const frames = [
      ["so um the valve was weeping and ", " i put a new one in and its been fine"],
      ["Resealed the roof ", ". Dry."],
      ["the gray tank was patched ", " with epoxy"],
    ] as const;
    const alone = PHRASES.filter(
      ({ file, text }, i) => i % 4 === 1 && !/none|chains|questions/u.test(file) && !/ i |^it/u.test(text),
    );
    for (const { text, moment, options } of alone)
      for (const [before, after] of frames) {
        const said = (words: string) =>
          findTimes(words, moment, options).map(({ edtf, role }) => `${edtf} ${role}`);
        expect(said(`${before}${text}${after}`), `${before}${text}${after}`).toEqual(said(text));
      }
  });

  it("numbers lie in the text, in order, with their middle between their ends", () => {
    for (const text of SOME) {
      let end = 0;
      for (const { span, low, high, value } of findNumbers(text)) {
        expect(span.start, text).toBeGreaterThanOrEqual(end);
        expect(low <= value && value <= high, `${text}: ${low} ${value} ${high}`).toBe(true);
        end = span.end;
      }
    }
  });
});
