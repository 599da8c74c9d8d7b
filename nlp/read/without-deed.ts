import { systemOf } from "../../shared/vocabulary.ts";
import type { Build } from "./build.ts";
import { faultIn, whereOf } from "./fields.ts";
import { type Made, NOTHING_USED } from "./made.ts";
import { isMuted } from "./muted.ts";
import { type Judged, judge } from "./outcome.ts";
import type { Stretch } from "./scan.ts";
import type { Told } from "./told.ts";
import { touching } from "./windows.ts";
import { listed, SUBJECTS } from "./words.ts";

const NEAR_CLAUSES = 2;
/** Openers of what is only imagined. */
const SUPPOSED = new Set(["until", "till", "if", "unless"]);

/** What is said of a thing that nothing was done to, near where it is named. */
export const withoutDeed = (told: Told, build: Build): Made | undefined => {
  const { clauses, index, muted } = build;
  const near = (ref: Stretch): boolean =>
    !SUPPOSED.has(build.scan.tokens[clauses[index[ref.from] ?? 0]?.from ?? 0]?.norm ?? "") &&
    told.topic.mentions.some((mention) => {
      const [first, last] = [index[mention.from] ?? 0, index[ref.from] ?? 0];
      if (last < first || last > first + NEAR_CLAUSES) return false;
      return !clauses.slice(first, last).some((clause) => isMuted(muted, clause.to - 1));
    });
  const mine = { ...told, faults: told.faults.filter(near), verdicts: told.verdicts.filter(near) };
  const from = told.topic.stretches[0]?.from ?? 0;
  const to = told.topic.stretches.at(-1)?.to ?? from;
  const base = {
    told,
    event: null,
    used: NOTHING_USED,
    where: whereOf(told, { from, to }, build),
    exposure: [],
    cost: null,
    due: null,
    span: { from, to },
    sure: {},
    dated: undefined,
  };
  const fault = faultIn(mine, build, from, to);
  const verdict = mine.verdicts.at(-1);
  const good = verdict?.value.outcome === "holding" || verdict?.value.outcome === "partly";
  if (fault !== null && !good)
    return {
      ...base,
      kind: retold(told, build) ? "check" : "fault",
      action: retold(told, build) ? "inspect" : null,
      judged: retold(told, build) ? FAILED : null,
      fault,
    };
  if (verdict === undefined || verdict.value.outcome === "untested") return undefined;
  if (verdict.value.outcome === "failed" && !retold(told, build))
    return { ...base, kind: "fault", action: null, judged: null, fault: fault ?? verdict };
  if (!close(told, verdict, build))
    return fault === null ? undefined : { ...base, kind: "fault", action: null, judged: null, fault };
  const action =
    systemOf(told.topic.component) === "alarms" && told.topic.component !== "extinguisher"
      ? "test"
      : "inspect";
  return { ...base, kind: "check", action, judged: judge(mine.verdicts, [], []), fault };
};

/** A look without a deed, or trouble only told, as a record. */
export const bareRecord = (
  told: Told,
  { from, to }: Stretch,
  trouble: Stretch | null,
  found: { readonly judged: Judged } | null,
  build: Build,
): Made => ({
  kind: found === null ? "fault" : "check",
  told,
  event: null,
  action: found === null ? null : testedOnly(told) ? "test" : "inspect",
  dated: undefined,
  judged: found?.judged ?? null,
  used: NOTHING_USED,
  where: whereOf(told, { from, to }, build),
  exposure: [],
  cost: null,
  fault: trouble,
  due: null,
  span: { from, to },
  sure: {},
});

const testedOnly = ({ topic }: Told): boolean =>
  systemOf(topic.component) === "alarms" && topic.component !== "extinguisher";

export const FAILED: Judged = { outcome: "failed", spans: [], rule: "earlier-work-failed" };
const EARLIER = listed("recordsEarlier");
const NOT_EARLIER = listed("recordsNotEarlier");

/** Speaks of earlier work that this note does not retell: "update on the door seal: wet again". */
export const retold = (told: Told, { scan }: Build): boolean => {
  const [from, to] = [
    Math.max(0, (told.topic.stretches[0]?.from ?? 0) - 3),
    told.topic.stretches.at(-1)?.to ?? 0,
  ];
  return scan.tokens
    .slice(from, to)
    .some((token, at, all) => EARLIER.has(token.norm) && !NOT_EARLIER.has(all[at - 1]?.norm ?? ""));
};

const GOES_ON = listed("recordsGoesOn");

const CLOSE_TOKENS = 9;

/** Said in the clause that names the thing, or right after it of the same thing, and not hoped for. */
const close = (told: Told, verdict: Stretch, { clauses, index, scan }: Build): boolean => {
  const hoped = scan.tokens
    .slice(Math.max(0, verdict.from - 3), verdict.to)
    .some((token) => token.norm === "hope");
  return (
    !hoped &&
    told.topic.mentions.some((mention) => {
      if (mention.weak && told.topic.mentions.length === 1) return false;
      if (verdict.from < mention.from || verdict.from - mention.to > CLOSE_TOKENS) return false;
      if (
        touching(scan.components, mention.to, verdict.from).some(
          (ref) => ref.from >= mention.to && ref.from < verdict.from && ref.id !== mention.id,
        )
      )
        return false;
      const [first, last] = [index[mention.from] ?? 0, index[verdict.from] ?? 0];
      const opener = scan.tokens[clauses[last]?.from ?? 0]?.norm ?? "";
      return (
        first === last ||
        (last === first + 1 &&
          (GOES_ON.has(opener) || (clauses[last]?.hard === false && !SUBJECTS.has(opener))))
      );
    })
  );
};
