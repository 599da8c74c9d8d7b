import { HAS_RECOGNIZERS, recognizerFigures } from "./recognizers.ts";

/** Prints how ours and chrono alone do on the expressions of others: npx tsx test/nlp/time/figures.ts */
const percent = (part: number): string => `${(100 * part).toFixed(1)} %`;
if (!HAS_RECOGNIZERS) console.log("Left out: ../shared/checks/time/recognizers-en.jsonl is absent.");
else
  for (const kind of ["date", "daterange"] as const) {
    const { ours, chrono } = recognizerFigures(kind);
    console.log(`${kind}, ${ours.cases} cases`);
    for (const [name, { exact, covered }] of Object.entries({ ours, chrono }))
      console.log(`  ${name.padEnd(8)} same days ${percent(exact)}, same or covered ${percent(covered)}`);
  }
