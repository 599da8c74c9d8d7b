import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { guessWord } from "../../../../nlp/read/guesses.ts";
import type { Setting } from "../../../../nlp/read/setting.ts";
import { settingsSeen } from "./examples.ts";
import { KEPT_OUT, type KnownNote, type KnownRecord, knownNotes } from "./notes.ts";

/**
 * `tsx test/nlp/read/training/guesses.ts [SET...]`: writes down which words that name no thing by themselves have mostly
 * stood for one in the notes, all but those kept out and the sets named. Run before `figures.ts`.
 */
const keptOut = new Set([...KEPT_OUT, ...process.argv.slice(2)]);

/** A word counts that stood for a thing as often as this, and in this part of all the times that it was said. */
const OFTEN = 3;
const LEAST_SHARE = 0.08;
/** As many things as a word may stand for. */
const MOST = 3;

type Counts = { all: number; readonly of: Map<string, number> };
const counts = new Map<string, Counts>();

const namedAt = (
  text: string,
  { named, anchor }: KnownRecord,
): { start: number; end: number } | undefined => {
  if (named === undefined || named === "") return undefined;
  const told = text.indexOf(anchor);
  const places: number[] = [];
  for (let at = text.indexOf(named); at >= 0; at = text.indexOf(named, at + 1)) places.push(at);
  const [start] = places.sort((a, b) => Math.abs(a - told) - Math.abs(b - told));
  return start === undefined ? undefined : { start, end: start + named.length };
};

const add = (word: string, meant: ReadonlySet<string>): void => {
  const known = counts.get(word) ?? { all: 0, of: new Map<string, number>() };
  counts.set(word, known);
  known.all++;
  for (const component of meant) known.of.set(component, (known.of.get(component) ?? 0) + 1);
};

const count = (note: KnownNote, { scan, named }: Setting): void => {
  const covered = new Set<number>();
  for (const ref of named)
    if (ref.guessed === undefined) for (let at = ref.from; at < ref.to; at++) covered.add(at);
  const spans = note.records.flatMap((record) => {
    const span = namedAt(note.text, record);
    return span === undefined ? [] : [{ ...span, component: record.component }];
  });
  const meantBy = (start: number, end: number): ReadonlySet<string> =>
    new Set(spans.flatMap((span) => (start >= span.start && end <= span.end ? [span.component] : [])));
  for (const [at, token] of scan.tokens.entries())
    if (!covered.has(at) && token.kind !== "mark")
      add(guessWord(token.norm), meantBy(token.start, token.end));
  for (const ref of named) {
    if (ref.guessed !== undefined) continue;
    const meant = meantBy(scan.tokens[ref.from]?.start ?? 0, scan.tokens[ref.to - 1]?.end ?? 0);
    add(
      `=${ref.words}`,
      new Set([...meant].filter((component) => component !== ref.id && !meant.has(ref.id))),
    );
  }
};

for (const note of knownNotes())
  if (!keptOut.has(note.set)) for (const setting of settingsSeen(note)) count(note, setting);

const words = [...counts]
  .map(([word, { all, of }]) => {
    const shares = [...of]
      .filter(([, times]) => times >= OFTEN && times / all >= LEAST_SHARE)
      .sort((a, b) => b[1] - a[1])
      .slice(0, MOST)
      .map(([component, times]) => [component, Math.round((times / all) * 100) / 100] as const);
    return [word, Object.fromEntries(shares)] as const;
  })
  .filter(([, shares]) => Object.keys(shares).length > 0)
  .sort(([a], [b]) => (a < b ? -1 : 1));

const about =
  "Words that name no thing by themselves, and in what part of all the times that they were said they stood for one. Counted in test/gold.";
writeFileSync(
  fileURLToPath(new URL("../../../../nlp/read/guesses.json", import.meta.url)),
  `{\n"about": ${JSON.stringify(about)},\n"words": {\n${words.map(([word, shares]) => `${JSON.stringify(word)}: ${JSON.stringify(shares)}`).join(",\n")}\n}\n}\n`,
);
process.stderr.write(`${String(words.length)} words\n`);
