import { Temporal } from "temporal-polyfill";
import type { KeptRecord, KeptUsage } from "../../shared/history.ts";
import { type Day, dateOf, dayOf } from "../../shared/outlook/days.ts";
import { DEFAULT_SETTINGS, outlooksOf, rigOf } from "../../shared/outlook/index.ts";
import { fieldsOf, WORKS } from "../shared/outlook/world/nature.ts";
import { pick, type Random, seeded } from "../shared/outlook/world/random.ts";

const LIVE_FIXES = 500;
const TODAY = new Temporal.PlainDate(2026, 6, 1);
const RUNS = 40;

const at = (day: Day) => dateOf(day).toString();

const fixOf = (random: Random, id: number, today: Day): KeptRecord => {
  const made = today - Math.floor(random() * 2500) - 5;
  const looked = made + Math.floor(random() * (today - made));
  const verdict = {
    outcome: "holding",
    when: at(looked),
    saidAt: `${at(looked)}T12:00:00Z`,
    exposure: [],
    noteId: id,
  } as const;
  const fields = fieldsOf(pick(random, pick(random, WORKS)), at(made));
  return {
    id,
    noteId: id,
    saidAt: `${at(made)}T12:00:00Z`,
    saidBy: "crew",
    fields: { ...fields, outcome: "holding" },
    doneBy: null,
    brands: [],
    line: id,
    closedBy: null,
    settled: false,
    got: false,
    removed: false,
    verdicts: random() < 0.7 ? [verdict] : [],
  };
};

const logOf = (random: Random, today: Day): KeptUsage[] =>
  Array.from({ length: 300 }, (_, id) => ({
    id,
    noteId: id,
    saidAt: `${at(today - id * 8)}T20:00:00Z`,
    usage: { count: Math.round(50 + 200 * random()), unit: "miles", date: at(today - id * 8) },
  }));

/** Milliseconds for the outlooks of one rig with 500 live fixes and 300 entries of use, the middle of several runs. */
const middleMillis = (): number => {
  const random = seeded(500);
  const today = dayOf(TODAY);
  const records = Array.from({ length: LIVE_FIXES }, (_, index) => fixOf(random, index + 1, today));
  const usage = logOf(random, today);
  const millis = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    const rig = rigOf({ usage, trip: null, settings: DEFAULT_SETTINGS, today: TODAY, hemisphere: "north" });
    outlooksOf({ ...rig, records });
    return performance.now() - start;
  });
  return millis.toSorted((a, b) => a - b)[Math.floor(RUNS / 2)] ?? Number.NaN;
};

/** The outlooks of a whole rig, and what is due next on it, from its records and its use log. */
export const benchOutlook = (): Promise<void> => {
  console.log(
    `Outlook of ${LIVE_FIXES} live fixes: ${middleMillis().toFixed(1)} ms (middle of ${RUNS} runs)`,
  );
  return Promise.resolve();
};
