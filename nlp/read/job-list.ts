import type { Draft, Evidence, Reading, Span } from "../../shared/reading.ts";
import { isSurelyPast } from "./past.ts";
import type { Scan } from "./scan.ts";
import { listed } from "./words.ts";

/** A stretch of a note and where it begins. */
type Piece = { readonly text: string; readonly start: number };

/** Jobs or things to get, each on a line of its own under words that say so. */
export type JobList = { readonly before: string; readonly heading: string; readonly items: readonly Piece[] };

const HEADING = listed("jobListHeading");
const NO_HEADING = listed("jobListNoHeading");
const VERBS = listed("jobListVerbs");

const LONGEST_HEADING = 16;
const LONGEST_ITEM = 18;
const FEWEST_ITEMS = 2;
const MOST_LINES = 60;

const BULLET = /^\s*(?:[-–•*]|\d{1,2}[.)]|\[ ?\])\s*/;
const BY_WHEN = /\b(?:before|by)\b.*[\p{L}\d]/iu;

const wordsOf = (text: string): readonly string[] => text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];

const linesOf = (text: string): readonly Piece[] =>
  [...text.matchAll(/[^\n]+/g)]
    .map(({ 0: line, index }) => ({ text: line, start: index }))
    .filter((line) => line.text.trim() !== "");

const isHeading = (text: string): boolean => {
  const words = wordsOf(text);
  return (
    words.length <= LONGEST_HEADING &&
    words.some((word) => HEADING.has(word)) &&
    !words.some((word) => NO_HEADING.has(word))
  );
};

const itemOf = ({ text, start }: Piece): Piece => {
  const bullet = BULLET.exec(text)?.[0].length ?? 0;
  return { text: text.slice(bullet).trimEnd(), start: start + bullet };
};

const isItem = ({ text }: Piece): boolean => {
  const { length } = wordsOf(text);
  return length > 0 && length <= LONGEST_ITEM;
};

/** The list that a note ends on, if it does; `tells` says whether words by themselves tell of anything. */
export const jobListIn = (text: string, tells: (words: string) => boolean): JobList | undefined => {
  if (!text.includes("\n")) return undefined;
  const lines = linesOf(text);
  if (lines.length > MOST_LINES) return undefined;
  for (const [at, { text: heading, start }] of lines.entries()) {
    const items = lines.slice(at + 1).map(itemOf);
    if (items.length < FEWEST_ITEMS) return undefined;
    if (isHeading(heading) && items.every(isItem) && !tells(heading))
      return { before: text.slice(0, start), heading, items };
  }
  return undefined;
};

/** What is said before an item so that it is a whole intention: "need to" grease the hubs, "need" two tires. */
const leadOf = (item: string, scan: Scan): string =>
  scan.acts.some(({ from }) => from === 0) || VERBS.has(wordsOf(item)[0] ?? "") ? "need to " : "need ";

/** "Swans on the lake" names no work, no thing and no stuff, whatever stands above it. */
const mayBeJob = (item: string, { acts, components, materials }: Scan): boolean =>
  acts.length + components.length + materials.length > 0 || VERBS.has(wordsOf(item)[0] ?? "");

/** "Greased the hubs" was done, wherever it stands. */
const isDone = ({ acts, tokens }: Scan): boolean =>
  acts.some(({ from }) => isSurelyPast(tokens[from]?.norm ?? ""));

const isPlanned = ({ records }: Reading): boolean =>
  records.length > 0 && records.every(({ fields }) => fields.kind === "todo");

/** Back to where the words stand in the whole note; what was only added to them stands at their beginning. */
const movedTo = (reading: Reading, { text, start }: Piece, lead: string): Reading => {
  const place = (at: number): number => start + Math.max(0, Math.min(at - lead.length, text.length));
  const moved = (span: Span): Span => ({ start: place(span.start), end: place(span.end) });
  const based = (evidence: Evidence): Evidence => ({ ...evidence, spans: evidence.spans.map(moved) });
  const draft = (each: Draft): Draft => ({
    ...each,
    span: moved(each.span),
    evidence: Object.fromEntries(
      Object.entries(each.evidence).map(([field, evidence]) => [field, based(evidence)]),
    ),
  });
  return {
    records: reading.records.map(draft),
    usage: reading.usage.map((each) => ({ ...each, span: moved(each.span) })),
  };
};

/** Reads each item by itself, as the intention that it is; by when stands in the heading. */
export const readJobList = (
  { before, heading, items }: JobList,
  read: (text: string) => Reading,
  scan: (text: string) => Scan,
): Reading => {
  const when = BY_WHEN.exec(heading)?.[0];
  const readings = items.map((item) => {
    const [plain, seen] = [read(item.text), scan(item.text)];
    const isWhole = isPlanned(plain) ? when === undefined : isDone(seen);
    if (isWhole) return movedTo(plain, item, "");
    if (!mayBeJob(item.text, seen)) return movedTo(plain, item, "");
    const lead = leadOf(item.text, seen);
    const planned = read([`${lead}${item.text}`, ...(when === undefined ? [] : [when])].join(" "));
    return isPlanned(planned) ? movedTo(planned, item, lead) : movedTo(plain, item, "");
  });
  const all = [...(before.trim() === "" ? [] : [read(before)]), ...readings];
  return { records: all.flatMap(({ records }) => records), usage: all.flatMap(({ usage }) => usage) };
};
