import { blocksIn, playLater } from "./older.ts";

/** `tsx test/gold/score-older.ts FILE [--figures]`: how many messages about what was told long before are taken as they were meant. */
const [path = "test/gold/older-1.jsonl"] = process.argv.slice(2);
const figuresOnly = process.argv.includes("--figures");
const tallies = new Map<string, { right: number; all: number }>();
for (const block of blocksIn(path))
  for (const later of block.later) {
    const { right, said, before } = await playLater(block, later);
    const tally = tallies.get(later.is) ?? { right: 0, all: 0 };
    tallies.set(later.is, { right: tally.right + Number(right), all: tally.all + 1 });
    if (right || figuresOnly) continue;
    const about = later.of === undefined ? undefined : before[later.of];
    console.log(
      `${block.id} ${later.is}: ${about?.turn.text ?? ""} | ${later.text}\n   want ${JSON.stringify(later.fixed ?? later.records ?? later.is)}\n   had ${JSON.stringify(about?.records.map(({ id, component, action, date, cost }) => [id, component, action, date, cost]))} > ${said.replies.join(" / ").replaceAll("\n", " ").slice(0, 160)}`,
    );
  }
for (const [is, { right, all }] of tallies)
  console.log(`${is}: ${right}/${all} = ${(right / all).toFixed(3)}`);
