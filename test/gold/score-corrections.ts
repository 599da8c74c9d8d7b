import { afterwardsIn, playAfterwards } from "./corrections.ts";

/** `tsx test/gold/score-corrections.ts FILE [--figures]`: how many second messages are taken as they were meant. */
const [path = "test/gold/corrections-1.jsonl"] = process.argv.slice(2);
const figuresOnly = process.argv.includes("--figures");
const tallies = new Map<string, { right: number; all: number }>();
for (const line of afterwardsIn(path)) {
  const { right, first, second } = await playAfterwards(line);
  const tally = tallies.get(line.is) ?? { right: 0, all: 0 };
  tallies.set(line.is, { right: tally.right + Number(right), all: tally.all + 1 });
  if (!right && !figuresOnly)
    console.log(
      `${line.is}: ${line.before} | ${line.text}\n   want ${JSON.stringify(line.fixed ?? line.records ?? "removed")}\n   first ${JSON.stringify(first.records.map(({ component, action }) => [component, action]))} > ${second.replies.join(" / ").replaceAll("\n", " ").slice(0, 160)}`,
    );
}
for (const [is, { right, all }] of tallies)
  console.log(`${is}: ${right}/${all} = ${(right / all).toFixed(3)}`);
