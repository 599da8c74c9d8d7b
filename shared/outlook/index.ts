export { carriesLook } from "./attempt.ts";
export { careAnswered, careDue } from "./care.ts";
export type { CareChoice, CareDue, CareInput, CareReason } from "./care-choice.ts";
export { CARE_ROWS, type CareRow } from "./care-table.ts";
export { cautionFor, type Work } from "./cautions.ts";
export {
  type Decision,
  type DecisionInput,
  decide,
  type MissingNumber,
  type MoneyGiven,
} from "./deciding.ts";
export { decisionWords } from "./decision-words.ts";
export { type LeavingItem, leavingList } from "./leaving.ts";
export type { Outlook } from "./outlook.ts";
export { outlookOf, outlooksOf } from "./outlooks.ts";
export { cureOf, type Ready, readyAgain } from "./ready-again.ts";
export { type Rig, rigOf } from "./rig.ts";
export { DEFAULT_SETTINGS, type Settings } from "./settings.ts";
export { type Trip, type Use, useOf } from "./use.ts";
