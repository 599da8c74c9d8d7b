import type { LearntJudges } from "../../../../nlp/read/judges.ts";
import type { Learnt } from "../../../../nlp/read/linear.ts";
import { ACTIONS, COMPONENTS, KINDS, OUTCOMES } from "../../../../shared/vocabulary.ts";
import type { Lessons } from "./examples.ts";
import { fitShares, regress } from "./linear.ts";

export const learnDescribed = ({ described }: Pick<Lessons, "described">) =>
  regress(described, COMPONENTS, { pull: 1, smallest: 0.25, rounds: 6 });

const NOTHING: Learnt = { of: [], bias: [], signs: {} };
export const EMPTY_TABLES: LearntJudges = {
  tells: NOTHING,
  kind: NOTHING,
  aim: NOTHING,
  described: NOTHING,
  date: NOTHING,
  where: NOTHING,
  exposure: NOTHING,
  cost: NOTHING,
  material: NOTHING,
  action: NOTHING,
  outcome: NOTHING,
};

/** The judges as learnt from what notes teach, each at the pace at which it does best on notes held out. */
export const learn = (lessons: Lessons): LearntJudges => ({
  tells: regress(lessons.tells, ["tells"], { pull: 1, smallest: 0.1 }),
  kind: regress(lessons.kind, KINDS, { pull: 2, smallest: 0.13 }),
  described: learnDescribed(lessons),
  aim: fitShares(lessons.aim, { pull: 1, smallest: 0.1 }),
  date: fitShares(lessons.date, { pull: 8 }),
  where: fitShares(lessons.where, { pull: 4 }),
  exposure: regress(lessons.exposure, ["since"], { pull: 4 }),
  cost: regress(lessons.cost, ["paid"], { pull: 2, smallest: 0.1 }),
  material: regress(lessons.material, ["in"], { pull: 1, smallest: 0.12 }),
  action: regress(lessons.action, ACTIONS, { pull: 0.3, smallest: 0.25 }),
  outcome: regress(lessons.outcome, OUTCOMES, { pull: 3, smallest: 0.1 }),
});
