import type { KeptUsage } from "../history.ts";
import type { Answer, UseTotal } from "./answer-data.ts";
import { answerTo } from "./answer-parts.ts";
import type { Ground } from "./pool.ts";
import type { Query } from "./query.ts";

type Use = Extract<Query, { ask: "use" }>;

const readings = (entries: readonly KeptUsage[]): readonly number[] =>
  entries.flatMap(({ usage }) => ("reading" in usage ? [usage.reading] : []));

const amounts = (entries: readonly KeptUsage[]): number =>
  entries.reduce((sum, { usage }) => sum + ("count" in usage ? usage.count : 0), 0);

/** Amounts told, or what the meter moved if that is more: a trip may be logged both ways. */
const totalOf = (unit: string, entries: readonly KeptUsage[]): UseTotal => {
  const meter = readings(entries);
  const moved = meter.length > 1 ? Math.max(...meter) - Math.min(...meter) : 0;
  return { unit, count: Math.max(amounts(entries), moved), entries };
};

const latestReading = (entries: readonly KeptUsage[]): UseTotal[] => {
  const last = entries.findLast(({ usage }) => "reading" in usage);
  return last === undefined || !("reading" in last.usage)
    ? []
    : [{ unit: last.usage.unit, count: last.usage.reading, entries: [last] }];
};

/** How the rig was used: one total a unit, or what the meter last showed. */
export const answerUse = (ground: Ground, query: Use): Answer => {
  const { from, to } = query.period ?? { from: null, to: null };
  const entries = ground.history.usage(from ?? undefined, to ?? undefined);
  const fitting = query.unit === null ? entries : entries.filter(({ usage }) => usage.unit === query.unit);
  const units = [...new Set(fitting.map(({ usage }) => usage.unit))];
  const use = query.meter
    ? latestReading(fitting)
    : units.map((unit) =>
        totalOf(
          unit,
          fitting.filter(({ usage }) => usage.unit === unit),
        ),
      );
  const count = use.length === 1 ? (use[0]?.count ?? 0) : use.length === 0 ? 0 : null;
  return answerTo(query, { use, count, because: use.length > 0 ? "found" : "never-noted" });
};
