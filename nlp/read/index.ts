import type { Moment, Reading } from "../../shared/reading.ts";
import type { Build } from "./build.ts";
import { byRules } from "./by-rules.ts";
import { chosenIn } from "./chosen.ts";
import { withCosts } from "./costs.ts";
import { saidDay } from "./dates.ts";
import { saidIn } from "./holds.ts";
import { jobListIn, readJobList } from "./job-list.ts";
import { type Judges, LEARNT } from "./judges.ts";
import { withLostVerdicts } from "./lost-verdicts.ts";
import { draftOf } from "./made.ts";
import { withoutOnlyUse } from "./only-use.ts";
import { withoutPlaces } from "./place-only.ts";
import { recognised } from "./recognised.ts";
import { redone } from "./redone.ts";
import { remembered } from "./remembered.ts";
import { runsTold } from "./runs.ts";
import { samePlace } from "./same-place.ts";
import { scan } from "./scan.ts";
import { segmentsOf } from "./segments.ts";
import { settingOf } from "./setting.ts";
import { toldRecords } from "./tell.ts";
import { toldOnce } from "./told-once.ts";
import { withoutTroubleFirst } from "./trouble-first.ts";
import { withDates } from "./undated.ts";
import { usageOf } from "./usage.ts";
import { weighed } from "./weighed.ts";
import { Places } from "./where.ts";

/** When the judges are sure of nothing in a short note, what the rules read stands from here on, in log odds. */
const LEANING = -2.9;
/** Most words of a short note, marks too. */
const SHORT = 36;

/** As `read`, by judges that may be others, and of a text that is no list of jobs. */
export const readBy = (judges: Judges, text: string, moment: Moment): Reading => {
  const today = saidDay(moment);
  const ground = recognised(text, moment);
  const { scan, clauses, index, fixed, muted } = ground;
  if (scan.tokens.length === 0) return { records: [], usage: [] };
  const runs = runsTold(scan, today);
  if (runs !== undefined) return { records: [], usage: [runs] };
  const ours = saidIn(ground, { muted: false });
  const usage = usageOf(ground, today, judges);
  const used = new Map(usage.map(({ span, sure }) => [span.start, sure]));
  const build: Build = {
    scan,
    clauses,
    index,
    dead: fixed.dead,
    places: new Places(scan, fixed.dead),
    today,
    muted,
    times: ours.times,
    deeds: ours.deeds,
    ofRig: new Map(
      scan.tokens.flatMap(({ start }, at) => {
        const sure = used.get(start);
        return sure === undefined ? [] : [[at, sure] as const];
      }),
    ),
  };
  const ruled = byRules(ground, ours, build);
  const setting = settingOf(ground, ruled);
  const { chosen, likely } = chosenIn(setting, judges);
  const all = { ...saidIn(ground, { muted: true }), deeds: ours.deeds, verdicts: ours.verdicts };
  const told = toldRecords(setting, chosen, segmentsOf(setting, chosen), all, build, judges);
  const leaning = told.length === 0 && likely > LEANING && scan.tokens.length <= SHORT ? ruled.records : told;
  const inOrder = leaning.toSorted((a, b) => a.span.from - b.span.from);
  const dated = withDates(withLostVerdicts(inOrder, ours.verdicts, scan, clauses, index), build);
  const paid = withCosts(dated, ours.amounts, build);
  const records = weighed(paid, build, judges);
  const drafts = redone(
    records.map((each) => draftOf(each, scan, clauses)),
    today,
  );
  const ofFixes = new Set(
    records.flatMap(({ exposure }) => exposure.map(({ at }) => scan.tokens[at.from]?.start)),
  );
  return {
    usage: usage.filter(({ span }) => !ofFixes.has(span.start)),
    records: samePlace(withoutOnlyUse(toldOnce(withoutTroubleFirst(withoutPlaces(drafts)), text))),
  };
};

const readWhole = (text: string, moment: Moment): Reading => {
  const told = (words: string): Reading => readBy(LEARNT, words, moment);
  const list = jobListIn(text, (words) => told(words).records.length > 0);
  return list === undefined ? told(text) : readJobList(list, told, (words) => scan(words, moment));
};

/**
 * Reads a note into the records that a careful listener would write down, and the use of the rig that it reports.
 * Rules recognise and propose; judges learnt from known notes settle what is told where, of what, and how it came out.
 * Deterministic; grows linearly with the text. Throws a RangeError when `moment` holds no instant or zone.
 */
export const read = remembered(readWhole);
