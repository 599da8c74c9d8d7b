import { indexRules } from "../rule-index.ts";
import { AGO_RULES } from "./ago.ts";
import { BESIDE_RULES } from "./beside.ts";
import { CLOCK_RULES } from "./clocks.ts";
import { DAY_RULES } from "./days.ts";
import { DAY_OFF_RULES } from "./days-off.ts";
import { EDGE_RULES } from "./edges.ts";
import { FEAST_RULES } from "./feasts.ts";
import { LASTING_RULES } from "./lasting.ts";
import { MONTH_DAY_RULES } from "./month-days.ts";
import { MONTH_RULES } from "./months.ts";
import { ORDER_RULES } from "./order.ts";
import { QUARTER_RULES } from "./quarters.ts";
import { RANGE_RULES } from "./ranges.ts";
import { SEASON_RULES } from "./seasons.ts";
import { CAMPING_RULES, UNIT_RULES } from "./units.ts";
import { WEEKEND_RULES } from "./weekends.ts";
import { YEAR_RULES } from "./years.ts";

/**
 * All rules. The longest phrase wins; of two that are equally long, the one that stands earlier here:
 * first what names a time of its own, then what counts from one, last what only blurs one.
 */
export const RULES = indexRules([
  ...DAY_RULES,
  ...WEEKEND_RULES,
  ...MONTH_RULES,
  ...MONTH_DAY_RULES,
  ...SEASON_RULES,
  ...FEAST_RULES,
  ...DAY_OFF_RULES,
  ...YEAR_RULES,
  ...UNIT_RULES,
  ...QUARTER_RULES,
  ...CLOCK_RULES,
  ...CAMPING_RULES,
  ...BESIDE_RULES,
  ...RANGE_RULES,
  ...ORDER_RULES,
  ...AGO_RULES,
  ...LASTING_RULES,
  ...EDGE_RULES,
]);
