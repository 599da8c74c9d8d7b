import { tellingStems } from "../memory/words.ts";
import type { ComponentId } from "../vocabulary.ts";
import { CARE_ROWS, type CareRow } from "./care-table.ts";

const NOT_TELLING = tellingStems("check checks care reminder reminders nudge look clean test service");

const stemsOf = (text: string): readonly string[] =>
  [...tellingStems(text)].filter((stem) => !NOT_TELLING.has(stem));

const ROW_STEMS: ReadonlyMap<CareRow["id"], ReadonlySet<string>> = new Map(
  CARE_ROWS.map((row) => [row.id, new Set(stemsOf(`${row.say} ${row.id.replaceAll("-", " ")}`))]),
);

const fitOf = (row: CareRow, stems: readonly string[], components: readonly ComponentId[]): number =>
  stems.filter((stem) => ROW_STEMS.get(row.id)?.has(stem)).length +
  (components.some((component) => row.components.includes(component)) ? 1 : 0);

/** The rows of care that are meant by words and the components that they name; those that fit best. */
export const careNamed = (about: string, components: readonly ComponentId[]): readonly CareRow[] => {
  const stems = stemsOf(about);
  const fits = CARE_ROWS.map((row) => fitOf(row, stems, components));
  const best = Math.max(...fits);
  return best === 0 ? [] : CARE_ROWS.filter((_, index) => fits[index] === best);
};
