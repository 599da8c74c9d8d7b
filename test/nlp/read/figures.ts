import { calibrationTable, reliability } from "./calibration.ts";
import {
  compromiseAlone,
  figuresOf,
  HAS_MAINTIE,
  HAS_WORK_ORDERS,
  maintieSentences,
  ours,
  type Sentence,
  type Sort,
  workOrderSentences,
} from "./maintenance.ts";

/**
 * Prints the reader's figures on maintenance texts by others beside published ones, and how sure it may be:
 * npx tsx test/nlp/read/figures.ts
 */
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const SORTS: readonly Sort[] = ["activity", "trouble", "object"];

const print = (
  name: string,
  sentences: readonly Sentence[],
  published: Readonly<Record<Sort, string>>,
): void => {
  console.log(`${name}, ${String(sentences.length)} texts (touching / exact span F1)`);
  for (const sort of SORTS) {
    const [us, plain] = [figuresOf(sentences, sort, ours), figuresOf(sentences, sort, compromiseAlone)];
    console.log(
      `  ${sort.padEnd(9)} ours ${percent(us.touching)} / ${percent(us.exact)}   compromise alone ${percent(plain.touching)} / ${percent(plain.exact)}   published ${published[sort]}`,
    );
  }
};

if (HAS_MAINTIE)
  print("MaintIE", maintieSentences(), {
    activity: "trained 96.5, lexicon of its rows 90.2",
    trouble: "trained 90.3, lexicon 75.0",
    object: "trained 82.7, lexicon 57.9",
  });
else console.log("Left out: ../shared/checks/maintie is absent.");
if (HAS_WORK_ORDERS)
  print("Work orders", workOrderSentences(), {
    activity: "trained 91.0",
    trouble: "trained 80.0",
    object: "trained 79.2",
  });
else console.log("Left out: ../shared/checks/mwo2kg is absent.");

const write = process.argv.includes("--calibrate");
if (write) console.log(JSON.stringify(calibrationTable(), null, 1));
for (const { name, rows } of reliability()) {
  console.log(`reliability on ${name}: sure, share right, claims`);
  for (const { sure, right, count } of rows)
    console.log(`  ${sure.toFixed(1)}  ${percent(right)}  ${String(count)}`);
}
