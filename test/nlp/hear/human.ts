import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";

/** Human recordings of Debian's pocketsphinx-testdata: readings of LibriVox and playing cards, with their texts. */
const FOLDER = "/usr/share/pocketsphinx/test/data";
const SETS = [
  { folder: "librivox", texts: "transcription" },
  { folder: "cards", texts: "cards.transcription" },
] as const;

export type Reading = { readonly set: string; readonly path: string; readonly said: string };

export const HUMAN_RECORDINGS_THERE = existsSync(FOLDER);
export const WHY_LEFT_OUT = "left out: no human recordings here (apt-get install pocketsphinx-testdata)";

/** Lines are "<s> the words </s> (file name)". */
const readingsOf = async ({ folder, texts }: (typeof SETS)[number]): Promise<Reading[]> => {
  const lines = (await readFile(join(FOLDER, folder, texts), "utf8")).split("\n");
  return lines.flatMap((line) => {
    const [, said, name] = /^(?:<s> )?(.*?)(?: <\/s>)? \((.+)\)$/.exec(line.trim()) ?? [];
    if (said === undefined || name === undefined) return [];
    return [{ set: folder, path: join(FOLDER, folder, `${name}.wav`), said: said.trim() }];
  });
};

export const humanReadings = async (): Promise<Reading[]> => (await Promise.all(SETS.map(readingsOf))).flat();

/** What Debian's pocketsphinx makes of a recording with its stock model: the reference recogniser. */
export const pocketsphinx = (path: string): string =>
  execFileSync("pocketsphinx_continuous", ["-infile", path, "-logfn", "/dev/null"], {
    encoding: "utf8",
  }).trim();
