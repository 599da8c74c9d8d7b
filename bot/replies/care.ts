import { capital } from "../../shared/capital.ts";
import { CARE_ROWS, type CareRow } from "../../shared/outlook/index.ts";
import type { Button } from "../conversation/buttons.ts";
import type { Reply, Turn } from "../conversation/turn.ts";
import { keptChoices } from "../rig/care-choices.ts";
import { listed } from "./words.ts";

const ROWS_A_PAGE = 6;

export const rowLine = (row: CareRow): string => capital(row.say);

const years = (days: number): string => {
  const count = Math.round((2 * days) / 365.25) / 2;
  return count <= 1 ? "year" : `${count} years`;
};

const months = (days: number): string => {
  if (days < 14) return `${days} days`;
  if (days < 28) return `${Math.round(days / 7)} weeks`;
  const count = Math.round(days / 30.44);
  return count === 1 ? "month" : `${count} months`;
};

const every = ({ every: { days, ...uses } }: CareRow): string[] => {
  const time = days === undefined ? [] : [days >= 360 ? years(days) : months(days)];
  const use = (Object.entries(uses) as [string, number][]).map(([unit, count]) =>
    count === 1 ? unit.replace(/s$/, "") : `${count.toLocaleString("en-US")} ${unit}`,
  );
  const all = [...time, ...use];
  return all.length === 0 ? [] : [`every ${all.join(" or ")}`];
};

/** "every year or 12,000 miles", "each spring and autumn, before leaving". */
export const intervals = (row: CareRow): string =>
  [
    ...every(row),
    ...(row.seasons === undefined ? [] : [`each ${listed(row.seasons)}`]),
    ...(row.beforeTrip === true ? ["before leaving"] : []),
  ].join(", ");

const source = ({ sourceStatus }: CareRow): string =>
  sourceStatus === "no source" ? " (common practice)" : "";

/** The rows around one place of the table, each with whether it is on. */
export const carePage = (turn: Turn, index: number): Reply => {
  const start = Math.floor(Math.min(index, CARE_ROWS.length - 1) / ROWS_A_PAGE) * ROWS_A_PAGE;
  const rows = CARE_ROWS.slice(start, start + ROWS_A_PAGE);
  const on = new Set(keptChoices(turn.store).map(({ row }) => row));
  const lines = rows.map(
    (row, at) =>
      `${start + at + 1}. ${rowLine(row)}: ${intervals(row)}${source(row)}. ${on.has(row.id) ? "On" : "Off"}.`,
  );
  const switches = rows.map(
    (row, at): Button => ({
      label: `${start + at + 1} ${on.has(row.id) ? "off" : "on"}`,
      tap: { tap: "care", row: row.id, on: !on.has(row.id) },
    }),
  );
  const turnTo = (label: string, to: number): Button => ({
    label,
    tap: { tap: "care", row: `page.${to}`, on: true },
  });
  const pages = [
    ...(start > 0 ? [turnTo("Back", start - ROWS_A_PAGE)] : []),
    ...(start + ROWS_A_PAGE < CARE_ROWS.length ? [turnTo("More", start + ROWS_A_PAGE)] : []),
  ];
  return {
    text: `Standing care, ${start + 1} to ${start + rows.length} of ${CARE_ROWS.length}:\n${lines.join("\n")}`,
    buttons: [switches.slice(0, 3), switches.slice(3), pages].filter((row) => row.length > 0),
  };
};

export const careOffer = (): Reply => ({
  text: `Some things want a look whether or not they broke: bearings, tires, alarms, seams, gas. I know ${CARE_ROWS.length} such checks of a towed trailer, each with where its interval comes from. Shall I keep an eye on them?`,
  buttons: [
    [
      { label: "All of them", tap: { tap: "care", row: "all", on: true } },
      { label: "Let me pick", tap: { tap: "care", row: "page.0", on: true } },
    ],
  ],
});
