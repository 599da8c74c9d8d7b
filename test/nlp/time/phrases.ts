import { readdirSync, readFileSync } from "node:fs";
import type { TimeMention, TimeOptions } from "../../../nlp/time/index.ts";
import type { Moment } from "../../../shared/reading.ts";

/** A phrase of a fixture: "text => edtf role how-long; ..." under a head that says when and where it was said. */
export type Phrase = {
  readonly file: string;
  readonly text: string;
  readonly want: string;
  readonly moment: Moment;
  readonly options: TimeOptions;
};

const FOLDER = new URL("phrases/", import.meta.url);
const HEAD = /^# said (\S+) zone (\S+) hemisphere (north|south) prefer (past|future)(?: anchor (\S+))?$/u;

const headOf = (line: string): Pick<Phrase, "moment" | "options"> | undefined => {
  const [, said, zone, hemisphere, prefer, anchor] = HEAD.exec(line) ?? [];
  if (said === undefined || zone === undefined) return undefined;
  return {
    moment: { said, zone, hemisphere: hemisphere === "south" ? "south" : "north" },
    options: { prefer: prefer === "future" ? "future" : "past", ...(anchor === undefined ? {} : { anchor }) },
  };
};

const phrasesOf = (file: string): readonly Phrase[] => {
  let head: Pick<Phrase, "moment" | "options"> | undefined;
  return readFileSync(new URL(file, FOLDER), "utf8")
    .split("\n")
    .flatMap((line) => {
      head = headOf(line) ?? head;
      if (line.trim() === "" || line.startsWith("#") || head === undefined) return [];
      const [text = "", want = ""] = line.split(" =>");
      return [{ file, text, want: want.trim(), ...head }];
    });
};

export const PHRASES: readonly Phrase[] = readdirSync(FOLDER)
  .filter((file) => file.endsWith(".txt"))
  .flatMap(phrasesOf);

/** A mention as the fixtures write it. */
export const written = ({ edtf, role, lasting }: TimeMention): string =>
  [
    edtf,
    ...(role === "point" ? [] : [role]),
    ...(lasting === undefined ? [] : [`${lasting.count} ${lasting.unit}`]),
  ].join(" ");
