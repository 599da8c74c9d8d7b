import type { Edtf } from "../../shared/record.ts";
import type { Build } from "./build.ts";
import type { Dated } from "./dates.ts";
import { clauseAt } from "./ground.ts";
import { type Made, mainDeed } from "./made.ts";
import { isPastPoint } from "./past-points.ts";
import { isOfWhatIsNamed } from "./relative-times.ts";
import type { Stretch, TimeRef } from "./scan.ts";
import { startingIn } from "./windows.ts";
import { precisionOf, size, yearSigns } from "./year-signs.ts";
import { type InYearTold, inYearTold } from "./years-told.ts";

/** What a record may be dated by: a time that is named, what the rules work out, the day of speaking, or nothing. */
export type DateChoice = {
  readonly by: "time" | "rule" | "today" | "unknown" | "year-told";
  readonly dated: Dated;
  readonly time: TimeRef | undefined;
  /** Set where the time may be in the year told before it. */
  readonly inYear?: InYearTold;
};

const BACK = 90;
const AHEAD = 45;
const MOST_BEFORE = 4;
const MOST_AFTER = 3;
/** How many records before and after may stand between a record and a time. */
const AROUND = 16;

const placeOf = (made: Made): Stretch => {
  const deed = mainDeed(made);
  return deed === undefined ? made.span : { from: deed.at, to: deed.at + 1 };
};

/** A time as it is named by itself, and in the year told before. */
const ofTime = (time: TimeRef, build: Build): DateChoice[] => {
  const inYear = inYearTold(time, build);
  const as = (by: DateChoice["by"], edtf: Edtf): DateChoice => ({
    by,
    dated: { edtf, spans: [time], rule: by === "time" ? "named" : "in-the-year-told" },
    time,
    ...(inYear === undefined ? {} : { inYear }),
  });
  return [as("time", time.time.edtf), ...(inYear === undefined ? [] : [as("year-told", inYear.edtf)])];
};

/** The dates that a record may have, none of them twice. */
export const dateChoices = (made: Made, build: Build): DateChoice[] => {
  const { from, to } = placeOf(made);
  const past = startingIn(build.times, from - BACK, to + AHEAD).filter(
    (time) => isPastPoint(time, build.today) && !isOfWhatIsNamed(time, { from, to }, build),
  );
  const near = [
    ...past.filter((time) => time.from < from).slice(-MOST_BEFORE),
    ...past.filter((time) => time.from >= from).slice(0, MOST_AFTER),
  ];
  const choices: DateChoice[] = [
    { by: "unknown", dated: { edtf: null, spans: [], rule: "left-open" }, time: undefined },
    { by: "today", dated: { edtf: build.today, spans: [], rule: "just-now" }, time: undefined },
    ...near.flatMap((time) => ofTime(time, build)),
  ];
  const { dated } = made;
  const known = dated === undefined || choices.some((choice) => choice.dated.edtf === dated.edtf);
  return known ? choices : [...choices, { by: "rule", dated, time: undefined }];
};

const statusOf = (made: Made | undefined, today: Edtf): string =>
  made === undefined
    ? "first"
    : made.dated === undefined || made.dated.edtf === null
      ? "open"
      : made.dated.edtf === today
        ? "today"
        : "past";

/** How a note dates its work by the rules: how many records have a time of their own, and how many have none. */
const habitOf = (all: readonly Made[], today: Edtf): string => {
  const [past, none] = [
    all.filter((made) => statusOf(made, today) === "past").length,
    all.filter((made) => statusOf(made, today) !== "past").length,
  ];
  return `${size(past)}/${size(none)}`;
};

/** What the signs of a note's dates have in common. */
export type DateScene = { readonly all: readonly Made[]; readonly habit: string };
export const dateScene = (all: readonly Made[], build: Build): DateScene => ({
  all,
  habit: habitOf(all, build.today),
});

/** The signs, as names, that tell whether a record has a date. */
export const dateSigns = (
  made: Made,
  at: number,
  { all, habit }: DateScene,
  choice: DateChoice,
  build: Build,
): string[] => {
  const { scan, clauses, index, today } = build;
  const place = placeOf(made);
  const { by, time } = choice;
  const ruled = made.dated?.edtf === choice.dated.edtf || (made.dated === undefined && by === "unknown");
  const rule = made.dated?.rule ?? "none";
  const clause = clauseAt(build, place.from);
  const words = scan.tokens.slice(clause.from, place.from + 4).map((token) => token.norm);
  const outcome = made.judged?.outcome ?? "none";
  const verdict = made.judged?.rule.split(/[: ]/)[0] ?? "none";
  const previous = all[at - 1];
  const next = all[at + 1];
  const again =
    previous?.told.topic.component === made.told.topic.component
      ? "again"
      : next?.told.topic.component === made.told.topic.component
        ? "again-next"
        : "once";
  const base = [
    `by=${by}`,
    `by=${by} ruled=${String(ruled)}`,
    `by=${by} ruled=${String(ruled)} rule=${rule}`,
    `by=${by} rule=${rule}`,
    `by=${by} rule=${rule} habit=${habit}`,
    `by=${by} kind=${made.kind}`,
    `by=${by} kind=${made.kind} rule=${rule}`,
    `by=${by} habit=${habit}`,
    `by=${by} records=${size(all.length)}`,
    `by=${by} before=${statusOf(previous, today)}`,
    `by=${by} before=${statusOf(previous, today)} rule=${rule}`,
    `by=${by} after=${statusOf(next, today)}`,
    `by=${by} outcome=${outcome}`,
    `by=${by} outcome=${outcome} rule=${rule}`,
    `by=${by} verdict=${verdict}`,
    `by=${by} exposed=${String(made.exposure.length > 0)}`,
    `by=${by} again=${again}`,
    `by=${by} again=${again} outcome=${outcome}`,
    `by=${by} action=${made.action ?? "none"}`,
    `by=${by} opener=${words[0] ?? ""}`,
    `by=${by} place=${size(at)}`,
  ];
  if (time === undefined)
    return [
      ...base,
      ...words.map((word) => `by=${by} word=${word}`),
      `by=${by} verb=${scan.tokens[place.from]?.norm ?? ""}`,
    ];
  const side = time.from < place.from ? "before" : "after";
  const [left, right] = side === "before" ? [time.to, place.from] : [place.to, time.from];
  const home = clauseAt(build, time.from);
  const apart = Math.abs((index[time.from] ?? 0) - (index[place.from] ?? 0));
  const done = startingIn(build.deeds, left, right).filter((deed) => deed.status === "done").length;
  const starts = all.slice(Math.max(0, at - AROUND), at + AROUND).filter((other) => {
    const { from } = placeOf(other);
    return other !== made && from >= left && from < right;
  }).length;
  const hard = clauses
    .slice(
      Math.min(index[time.from] ?? 0, index[place.from] ?? 0) + 1,
      Math.max(index[time.from] ?? 0, index[place.from] ?? 0) + 1,
    )
    .filter((each) => each.hard).length;
  const said = startingIn(scan.verdicts, left, right).length;
  const faults = startingIn(scan.faults, left, right).length;
  const names = startingIn(scan.components, left, right).filter(
    (ref) => !ref.weak && ref.id !== made.told.topic.component,
  ).length;
  const ownDeed = startingIn(build.deeds, home.from, home.to).some((deed) => deed.status === "done");
  const inside = time.from >= made.span.from && time.from < made.span.to;
  const lead = scan.tokens[time.from - 1]?.norm ?? "";
  const opens = time.from - home.from <= 1;
  const where = `${side} ${size(apart)}`;
  const nearest = startingIn(build.times, left, right).filter(
    (other) => other !== time && isPastPoint(other, today),
  ).length;
  return [
    ...base,
    `where=${where}`,
    `where=${where} ruled=${String(ruled)}`,
    `where=${where} inside=${String(inside)}`,
    `where=${where} done=${size(done)}`,
    `where=${where} starts=${size(starts)}`,
    `where=${where} nearer=${size(nearest)}`,
    `where=${where} opens=${String(opens)}`,
    `where=${where} deed=${String(ownDeed)}`,
    `where=${where} said=${size(said)}`,
    `where=${where} rule=${rule}`,
    `gap=${side} ${size(right - left)}`,
    `inside=${String(inside)} starts=${size(starts)}`,
    `hard=${size(hard)} side=${side}`,
    `faults=${size(faults)} side=${side}`,
    `names=${size(names)} side=${side}`,
    `names=${size(names)} starts=${size(starts)} side=${side}`,
    `lead=${lead} side=${side}`,
    `lead=${lead} ruled=${String(ruled)}`,
    `home=${scan.tokens[home.from]?.norm ?? ""} side=${side}`,
    `precision=${precisionOf(choice.dated.edtf)}`,
    `precision=${precisionOf(choice.dated.edtf)} ruled=${String(ruled)}`,
    `role=${time.time.role}`,
    ...yearSigns(by, time, choice.inYear, build, all),
    `done=${size(done)} starts=${size(starts)} side=${side}`,
  ];
};
