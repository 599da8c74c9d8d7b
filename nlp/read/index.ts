import type { Moment, Reading } from "../../shared/reading.ts";
import type { Edtf } from "../../shared/record.ts";
import type { Build } from "./build.ts";
import { byRules } from "./by-rules.ts";
import { chosenIn } from "./chosen.ts";
import type { Clause } from "./clauses.ts";
import { withCosts } from "./costs.ts";
import { dateChoices, dateScene, dateSigns } from "./date-signs.ts";
import { saidDay } from "./dates.ts";
import { outcomeSigns } from "./field-signs.ts";
import { saidIn } from "./holds.ts";
import { type Judges, LEARNT } from "./judges.ts";
import { withLostVerdicts } from "./lost-verdicts.ts";
import { draftOf, type Made } from "./made.ts";
import { materialChoices, materialSigns, usedOf } from "./material-signs.ts";
import { recognised } from "./recognised.ts";
import { remembered } from "./remembered.ts";
import { segmentsOf } from "./segments.ts";
import { settingOf } from "./setting.ts";
import { toldRecords } from "./tell.ts";
import { withDates } from "./undated.ts";
import { usageOf } from "./usage.ts";
import { Places } from "./where.ts";

const MOST_SURE = 0.99;
/** When the judges are sure of nothing in a short note, what the rules read stands from here on. */
const LEANING = 0.15;
/** Most words of a short note, marks too. */
const SHORT = 36;

/** How a piece of work or a look came out, all its words weighed. */
const weighed = (made: Made, next: Made | undefined, build: Build, judges: Judges): Made => {
  if (made.kind !== "repair" && made.kind !== "check") return made;
  const { outcome, sure } = judges.outcome(outcomeSigns(made, next, build), made);
  const judged =
    outcome === (made.judged?.outcome ?? "untested")
      ? (made.judged ?? { outcome, spans: [], rule: "nothing-said" })
      : { outcome, spans: [], rule: "weighed" };
  return { ...made, judged, sure: { ...made.sure, outcome: Math.min(MOST_SURE, sure) } };
};

/** The materials that went in or on, of all that are named near a piece of work. */
const withMaterials = (
  made: Made,
  beside: readonly (Made | undefined)[],
  build: Build,
  judges: Judges,
): Made => {
  if (made.kind !== "repair" && made.kind !== "todo") return made;
  const choices = materialChoices(made, beside, build);
  const taken = choices.filter(
    (choice) => judges.material(materialSigns(made, choice, choices, build), made, choice, choices) >= EVEN,
  );
  return { ...made, used: usedOf(made.used, taken) };
};
const EVEN = 0.5;

/** Of the dates that each record may have the likeliest; those within one choice of each other count together. */
const redated = (ruled: readonly Made[], judged: readonly Made[], build: Build, judges: Judges): Made[] => {
  const scene = dateScene(ruled, build);
  return ruled.map((each, at) => {
    const made = judged[at] ?? each;
    if (each.kind === "todo") return made;
    const choices = dateChoices(each, build);
    const parts = judges.date(
      choices.map((choice) => dateSigns(each, at, scene, choice, build)),
      each,
      choices,
    );
    const shareOf = (edtf: Edtf | null): number =>
      choices.reduce((sum, choice, i) => (choice.dated.edtf === edtf ? sum + (parts[i] ?? 0) : sum), 0);
    const best = choices.reduce((top, choice) =>
      shareOf(choice.dated.edtf) > shareOf(top.dated.edtf) ? choice : top,
    );
    const sure = Math.min(MOST_SURE, shareOf(best.dated.edtf));
    const kept = each.dated !== undefined && each.dated.edtf === best.dated.edtf;
    return { ...made, dated: kept ? each.dated : best.dated, sure: { ...made.sure, date: sure } };
  });
};

/** As `read`, by judges that may be others. */
export const readBy = (judges: Judges, text: string, moment: Moment): Reading => {
  const today = saidDay(moment);
  const ground = recognised(text, moment);
  const { scan, clauses, index, fixed, muted } = ground;
  if (scan.tokens.length === 0) return { records: [], usage: [] };
  const ours = saidIn(ground, { muted: false });
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
  };
  const ruled = byRules(ground, ours, build);
  const setting = settingOf(ground, ruled);
  const { chosen, surest } = chosenIn(setting, judges);
  const all = { ...saidIn(ground, { muted: true }), deeds: ours.deeds, verdicts: ours.verdicts };
  const told = toldRecords(setting, chosen, segmentsOf(setting, chosen), all, build, judges);
  const leaning = told.length === 0 && surest > LEANING && scan.tokens.length <= SHORT ? ruled.records : told;
  const inOrder = leaning.toSorted((a, b) => a.span.from - b.span.from);
  const dated = withDates(withLostVerdicts(inOrder, ours.verdicts, scan, clauses, index), build);
  const paid = withCosts(dated, ours.amounts, build);
  const supplied = paid.map((each, at) => withMaterials(each, [paid[at - 1], paid[at + 1]], build, judges));
  const judged = supplied.map((each, at) => weighed(each, paid[at + 1], build, judges));
  const records = redated(paid, judged, build, judges);
  const exposed = new Set(records.flatMap((each) => each.exposure.map((exposure) => exposure.at.from)));
  const skip = (at: number): boolean => exposed.has(at) || fixed.dead[at] === 1;
  const clauseOf = (at: number): Clause =>
    clauses[index[at] ?? 0] ?? { from: 0, to: scan.tokens.length, hard: true, subordinate: false };
  return {
    records: records.map((each) => draftOf(each, scan, clauses)),
    usage: usageOf(scan, fixed.amounts, clauseOf, skip, today),
  };
};

/**
 * Reads a note into the records that a careful listener would write down, and the use of the rig that it reports.
 * Rules recognise and propose; judges learnt from known notes settle what is told where, of what, and how it came out.
 * Deterministic; grows linearly with the text. Throws a RangeError when `moment` holds no instant or zone.
 */
export const read = remembered((text: string, moment: Moment): Reading => readBy(LEARNT, text, moment));
