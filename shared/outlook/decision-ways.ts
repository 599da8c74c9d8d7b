import type { Attempt } from "./attempt.ts";
import { believe, noLessons } from "./belief.ts";
import type { Way } from "./decision.ts";
import { evidenceOf } from "./grid.ts";
import type { Prediction } from "./prediction.ts";
import type { FixKind } from "./priors.ts";
import type { Settings } from "./settings.ts";
import { medianYears } from "./worth.ts";

/** The life of the next fix of a kind on a line, from all that was tried there. */
export const predictNext = (kind: FixKind, attempts: readonly Attempt[], settings: Settings): Prediction =>
  believe(
    noLessons(kind, settings),
    null,
    attempts.map(({ kind, observation }) => evidenceOf(kind, observation)),
  );

export const hasFailed = ({ looks }: Attempt) => looks.at(-1)?.outcome === "failed";

const DAYS_PER_MONTH = 30.437;

const livedMonths = ({ looks, start }: Attempt): number => {
  const last = looks.at(-1);
  if (last === undefined) return 0;
  return (last.told ? last.age : last.day - start) / DAYS_PER_MONTH;
};

export const waysOf = (attempts: readonly Attempt[], ageing: number, settings: Settings): Way[] => {
  const kinds = new Map(attempts.map(({ kind }) => [kind.id, kind]));
  return [...kinds.values()].map((kind) => {
    const tries = attempts.filter((attempt) => attempt.kind.id === kind.id);
    return {
      say: kind.say,
      tries: tries.length,
      failed: tries.filter(hasFailed).length,
      livedMonths: tries
        .filter(hasFailed)
        .map(livedMonths)
        .toSorted((a, b) => a - b),
      typicalYears: medianYears(predictNext(kind, attempts, settings), ageing),
    };
  });
};
