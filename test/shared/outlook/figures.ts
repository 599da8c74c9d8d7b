import { AS_EXPECTED, type Nature } from "./world/nature.ts";
import { fromOwnLine, learning, unlearned } from "./world/policy.ts";
import { byTenths, fixedRoundFor, meanGap, runRigs } from "./world/report.ts";

/** `tsx test/shared/outlook/figures.ts [rigs]`: the full simulation, printed. */
const asked = Number(process.argv[2] ?? 1000);
const size = { years: 6, places: 10 };

/** Worlds that differ from the prior table are run with fewer rigs. */
const FEWER = 4;

const NATURES: Record<string, Nature> = {
  "as expected": AS_EXPECTED,
  "lives 0.5 of expected": { ...AS_EXPECTED, bias: 0.5 },
  "lives twice as long": { ...AS_EXPECTED, bias: 2 },
};

const print = (line: string) => process.stdout.write(`${line}\n`);
const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

for (const [name, nature] of Object.entries(NATURES)) {
  const rigs = nature === AS_EXPECTED ? asked : Math.ceil(asked / FEWER);
  print(`\n${name}: ${rigs} rigs, ${size.places} places, ${size.years} years`);
  for (const [title, policy] of Object.entries({
    learning,
    "own line only": fromOwnLine,
    "prior only": unlearned,
  })) {
    const tally = runRigs(rigs, nature, size, policy);
    const round = fixedRoundFor(tally.unnoticed, rigs, nature, size);
    print(
      `${title}: ${(tally.looks / tally.fixes).toFixed(2)} looks a fix; a fixed round of ${round.days.toFixed(0)} days takes ${(round.looks / tally.fixes).toFixed(2)}: ${percent(1 - tally.looks / round.looks)} fewer looks, ${percent(1 - tally.lookCost / round.lookCost)} less cost of looks; whole cost ${((tally.lookCost + tally.unnoticed) / tally.fixes).toFixed(2)} a fix`,
    );
    if (title !== "learning" && title !== "prior only") continue;
    for (const [what, stated] of Object.entries({ gone: tally.gone, lasts: tally.lasts })) {
      const tenths = byTenths(stated);
      print(`  ${what}: mean gap ${percent(meanGap(tenths))} over ${stated.length}`);
      for (const tenth of tenths)
        print(
          `    ${tenth.from.toFixed(1)}: ${String(tenth.count).padStart(7)} on ${String(tenth.rigs).padStart(4)} rigs, stated ${percent(tenth.stated)} came ${percent(tenth.came)}, off by ${percent(tenth.came - tenth.stated)} ± ${percent(tenth.error)}`,
        );
    }
  }
}
