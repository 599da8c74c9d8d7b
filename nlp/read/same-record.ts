import type { Candidate } from "./candidate.ts";
import { wordAt } from "./ground.ts";
import { looksPast } from "./past.ts";
import type { Setting } from "./setting.ts";
import { startingIn } from "./windows.ts";

/** Places as near as this, in words, tell the same of one thing; a little further still when one has no known verb. */
const NEAR = 5;
const NEARLY = 11;

/** The rules make one piece of work of both deeds, and the judges are less than sure of one. */
const inOneWork = ({ recordOf }: Setting, a: Candidate, b: Candidate): boolean => {
  if (a.telling.deed === undefined || b.telling.deed === undefined) return false;
  const made = recordOf.get(a.telling.deed);
  return (
    made !== undefined &&
    made === recordOf.get(b.telling.deed) &&
    Math.min(a.sureKind, b.sureKind) < QUITE_SURE
  );
};
const QUITE_SURE = 0.8;

/** "Checked the smoke alarm and the gas alarm": words that only name a thing, of which something was told before. */
const onlyNames = ({ scan }: Setting, { telling: { at, deed } }: Candidate): boolean =>
  deed === undefined &&
  !looksPast(wordAt(scan, at)) &&
  !wordAt(scan, at).endsWith("ing") &&
  startingIn(scan.verdicts, at, at + 1).length === 0 &&
  startingIn(scan.faults, at, at + 1).length === 0;

/** Whether two candidates seem to be one record, told twice. */
export const sameAs = (setting: Setting, a: Candidate, b: Candidate): boolean => {
  if (a.telling === b.telling || a.ref.id !== b.ref.id) return false;
  const apart = Math.abs(a.telling.at - b.telling.at);
  if (a.ref.from === b.ref.from && apart <= NEARLY && (onlyNames(setting, a) || onlyNames(setting, b)))
    return true;
  const known = a.telling.deed !== undefined && b.telling.deed !== undefined;
  if (known && a.kind === b.kind) return a.telling.clause === b.telling.clause || inOneWork(setting, a, b);
  if (known) return false;
  return apart <= NEAR || (apart <= NEARLY && a.kind === b.kind);
};
