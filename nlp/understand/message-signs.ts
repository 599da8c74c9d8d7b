import type { Intent } from "../../shared/memory/intent.ts";
import type { Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import { saysSame } from "../correct/offer-signs.ts";
import { wordSigns } from "../judges/word-signs.ts";
import { read } from "../read/index.ts";
import { scan } from "../read/scan.ts";
import { sizeOf } from "../read/sizes.ts";
import type { Meant } from "./lately.ts";

/** A message with what bears on what it is. */
export type Heard = {
  readonly text: string;
  readonly moment: Moment;
  /** What it may put right; nothing where nothing was told of. */
  readonly meant: Meant | undefined;
  /** What the rules take it for. */
  readonly ruled: Intent;
  /** A question was answered just before it. */
  readonly asked: boolean;
};

const ago = (minutes: number): string =>
  minutes <= 20 ? "just" : minutes <= 180 ? "hours" : minutes <= 2880 ? "days" : "long";

const sureness = (sure: number): string =>
  sure > 0.9 ? "sure" : sure > 0.6 ? "likely" : sure > 0.4 ? "even" : "open";

const FIELDS = ["component", "action", "date", "cost", "material", "where", "who", "outcome"] as const;

/** As many words of a message as are looked at one by one. */
const MOST = 60;

const ruleOf = (ruled: Intent): string =>
  ruled.is === "correct" ? `correct ${String(ruled.announced)}` : ruled.is;

/** For each field, whether the message names values for it, and whether they are those on record. */
const stands = (meant: Meant | undefined): string[] =>
  FIELDS.map((field) => {
    const mine = (meant?.offers ?? []).filter((offer) => offer.field === field);
    if (mine.length === 0 || meant === undefined) return `${field}:no`;
    const same = mine.filter((offer) => saysSame(offer, meant.shown.fields)).length;
    return `${field}:${same === 0 ? "other" : same === mine.length ? "same" : "both"}`;
  });

const against = <T>(told: T | null, kept: T | null): string =>
  told === null ? "none" : kept === null ? "new" : told === kept ? "same" : "other";

/** How work read in a message stands to the record that it may put right: a message that tells it again changes one thing. */
const retold = (fields: RecordFields, { shown }: Meant, moment: Moment): string => {
  const kept = shown.fields;
  const today = fields.date === moment.said.slice(0, "2025-01-01".length) && kept.date !== fields.date;
  const thing = fields.component === kept.component ? "same" : "other";
  const work = fields.action === kept.action ? "same" : "other";
  const date = today ? "today" : against(fields.date, kept.date);
  return `${fields.kind} ${thing} ${work} date=${date} cost=${against(fields.cost, kept.cost)}`;
};

/** The signs, as names, that tell what a message is: a question, something put right, taken away, or anything else. */
export const messageSigns = ({ text, moment, meant, ruled, asked }: Heard): string[] => {
  const { tokens, faults, verdicts } = scan(text, moment);
  const words = tokens.slice(0, MOST).map(({ norm }) => norm);
  const { records, usage } = read(text, moment);
  const when = meant === undefined ? "nothing" : meant.minutes === null ? "older" : ago(meant.minutes);
  const which = meant === undefined ? "none" : sureness(meant.sure);
  const made = records.map(({ fields }) =>
    meant === undefined
      ? fields.kind
      : `${fields.kind} ${fields.component === meant.shown.fields.component ? "same" : "other"} ${fields.action === meant.shown.fields.action ? "same" : "other"}`,
  );
  const size = sizeOf(tokens.length);
  const kinds = [...new Set(records.map(({ fields }) => fields.kind))].join("+");
  const stood = stands(meant);
  const agreeing = stood.filter((each) => /:(?:same|both)$/.test(each)).length;
  const differing = stood.filter((each) => each.endsWith(":other")).length;
  const agreed = `agreed=${sizeOf(agreeing)} ${sizeOf(differing)}`;
  const again =
    meant === undefined ? [] : records.slice(0, 2).map(({ fields }) => retold(fields, meant, moment));
  const rule = ruleOf(ruled);
  const plain = [
    `rule=${rule}`,
    `rule=${rule} kinds=${kinds}`,
    `size=${size}`,
    `which=${which}`,
    `which=${which} kinds=${kinds}`,
    `which=${which} rule=${rule}`,
    `records=${sizeOf(records.length)}`,
    `kinds=${kinds}`,
    `usage=${String(usage.length > 0)}`,
    `told=${String(faults.length + verdicts.length > 0)}`,
    `mark=${text.includes("?") ? "asks" : "no"}`,
    `opener=${words[0] ?? ""}`,
    `opener2=${words[0] ?? ""} ${words[1] ?? ""}`,
    `ender=${words.at(-1) ?? ""}`,
    ...made.map((each) => `made=${each}`),
    ...again.map((each) => `again=${each}`),
    agreed,
    `${agreed} kinds=${kinds}`,
    `${agreed} which=${which}`,
    ...stood,
    ...stood.map((each) => `kinds=${kinds} ${each}`),
    ...stood.map((each) => `size=${size} ${each}`),
    ...stood.map((each) => `rule=${rule} ${each}`),
  ];
  const next = asked
    ? ["", `size=${size}`, `kinds=${kinds}`, `rule=${rule}`, `opener=${words[0] ?? ""}`]
    : [];
  return [
    `when=${when}`,
    ...next.map((sign) => `asked ${sign}`),
    ...plain,
    ...plain.map((sign) => `${when} ${sign}`),
    `opener3=${words.slice(0, 3).join(" ")}`,
    `ender2=${words.slice(-2).join(" ")}`,
    ...words.map((word) => `word=${word}`),
    ...wordSigns(words),
    ...words.slice(1).map((word, at) => `pair=${words[at] ?? ""} ${word}`),
    ...words.slice(2).map((word, at) => `three=${words[at] ?? ""} ${words[at + 1] ?? ""} ${word}`),
    ...words.map((word) => `${when} word=${word}`),
  ];
};
