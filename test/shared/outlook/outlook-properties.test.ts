import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import type { KeptRecord, KeptUsage, Verdict } from "../../../shared/history.ts";
import { dateOf, dayOf } from "../../../shared/outlook/days.ts";
import { outlookOf, type Trip } from "../../../shared/outlook/index.ts";
import { fixKindOf } from "../../../shared/outlook/priors.ts";
import { ACTIONS, COMPONENTS } from "../../../shared/vocabulary.ts";
import { day, kept, rigOn, used, verdict, withVerdicts } from "./records.ts";

const TODAY = "2026-06-01";
const today = dayOf(day(TODAY));
const ago = (days: number) => dateOf(today - days).toString();

const material = fc.constantFrom(
  "tape",
  "epoxy",
  "lap sealant",
  "butyl",
  "silicone",
  "screw",
  "glue",
  "seal",
);
const fix = fc
  .record({
    component: fc.constantFrom(...COMPONENTS),
    action: fc.constantFrom(...ACTIONS),
    materials: fc.array(material, { maxLength: 1 }),
  })
  .filter((work) => fixKindOf({ ...kept(TODAY, work).fields }) !== undefined);

const log = fc
  .array(fc.record({ ago: fc.integer({ min: 0, max: 900 }), count: fc.integer({ min: 1, max: 400 }) }), {
    maxLength: 12,
  })
  .map((entries) =>
    entries.flatMap(({ ago: days, count }) => [
      used(ago(days), count, "miles"),
      used(ago(days), Math.ceil(count / 60), "fills"),
      used(ago(days), 1, "cycles"),
    ]),
  );

const age = fc.integer({ min: 40, max: 1500 });
const trip = fc.option(
  fc
    .record({
      wait: fc.integer({ min: 1, max: 60 }),
      days: fc.integer({ min: 2, max: 150 }),
      miles: fc.option(fc.integer({ min: 50, max: 6000 })),
    })
    .map(
      ({ wait, days, miles }): Trip => ({
        from: dateOf(today + wait),
        to: dateOf(today + wait + days),
        miles,
      }),
    ),
);

const see = (
  record: KeptRecord,
  usage: readonly KeptUsage[],
  ahead: Trip | null,
  line: readonly KeptRecord[] = [record],
) => {
  const outlook = outlookOf({ ...rigOn(TODAY, usage, ahead), record, line, peers: [] });
  if (outlook === undefined) throw new Error("A live fix has no outlook.");
  return outlook;
};

const notBefore = (one: Temporal.PlainDate, other: Temporal.PlainDate) =>
  Temporal.PlainDate.compare(one, other) >= 0;
const RUNS = { numRuns: 250 };

describe("for any fix", () => {
  it("one more good verdict never brings the next look closer", () => {
    fc.assert(
      fc.property(
        fix,
        age,
        fc.array(fc.nat({ max: 1000 }), { minLength: 1, maxLength: 4 }),
        log,
        trip,
        fc.constantFrom(1, 2, 10),
        (work, old, looks, usage, ahead, late) => {
          const told = Math.ceil(old / late);
          const days = [...new Set(looks.map((at) => at % told))].toSorted((a, b) => b - a);
          const record = kept(ago(told), { ...work, date: ago(old) });
          const verdicts: Verdict[] = days.map((at) => verdict("holding", ago(at)));
          const fewer = withVerdicts(record, ...verdicts.slice(0, -1));
          return notBefore(
            see(withVerdicts(record, ...verdicts), usage, ahead).nextLook.day,
            see(fewer, usage, ahead).nextLook.day,
          );
        },
      ),
      RUNS,
    );
  });

  it("more use since the last look never pushes the next one out", () => {
    fc.assert(
      fc.property(
        fix,
        age,
        log,
        fc.double({ min: 1.05, max: 5, noNaN: true }),
        trip,
        (work, old, usage, times, ahead) => {
          const record = withVerdicts(kept(ago(old), work), verdict("holding", ago(Math.floor(old / 2))));
          const since = ago(Math.floor(old / 2));
          const more = usage.map((entry) =>
            "count" in entry.usage && (entry.usage.date ?? "") > since
              ? { ...entry, usage: { ...entry.usage, count: entry.usage.count * times } }
              : entry,
          );
          return notBefore(see(record, usage, ahead).nextLook.day, see(record, more, ahead).nextLook.day);
        },
      ),
      RUNS,
    );
  });

  it("a failure in the same place never lengthens life", () => {
    fc.assert(
      fc.property(fix, age, fc.integer({ min: 0, max: 900 }), (work, lasted, good) => {
        const next = kept(ago(10), work);
        const earlier = { ...kept(ago(10 + lasted), work), line: next.line, closedBy: next.id };
        const seen = withVerdicts(earlier, verdict("holding", ago(10 + lasted - (good % lasted))));
        const life = (outcome: Verdict["outcome"]) =>
          see(next, [], null, [withVerdicts(seen, verdict(outcome, ago(10))), next]).life.typical;
        return life("failed") <= life("partly") * 1.0001 && life("partly") <= life("holding") * 1.0001;
      }),
      RUNS,
    );
  });

  it("kilometres and miles give the same day", () => {
    fc.assert(
      fc.property(fix, age, log, (work, old, usage) => {
        const record = withVerdicts(kept(ago(old), work), verdict("holding", ago(Math.floor(old / 3))));
        const metric = usage.map((entry) =>
          entry.usage.unit === "miles" && "count" in entry.usage
            ? {
                ...entry,
                usage: { ...entry.usage, count: entry.usage.count * 1.609344, unit: "km" as const },
              }
            : entry,
        );
        return see(record, usage, null).nextLook.day.equals(see(record, metric, null).nextLook.day);
      }),
      RUNS,
    );
  });

  it("every chance is one, and the look lies after the work", () => {
    fc.assert(
      fc.property(fix, age, log, trip, (work, old, usage, ahead) => {
        const { goneSinceLastLook, life, nextLook } = see(kept(ago(old), work), usage, ahead);
        expect(goneSinceLastLook).toBeGreaterThanOrEqual(0);
        expect(goneSinceLastLook).toBeLessThanOrEqual(1);
        expect(life.low).toBeLessThanOrEqual(life.typical);
        expect(life.typical).toBeLessThanOrEqual(life.high);
        return notBefore(nextLook.day, day(ago(old - 1)));
      }),
      RUNS,
    );
  });
});
