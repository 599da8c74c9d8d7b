import { Temporal } from "temporal-polyfill";
import type { Scene, Showing, Shown } from "../../shared/memory/scene.ts";
import { shareAny, tellingStems } from "../../shared/memory/words.ts";
import { putsIn, undoes } from "../../shared/memory/work.ts";
import type { Moment } from "../../shared/reading.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { speakingSigns } from "../ask/spoken-of.ts";
import { surelyNamed } from "../ask/surely-named.ts";
import { deniesSumOf } from "../correct/denied-values.ts";
import type { Offer } from "../correct/offer.ts";
import { saysSame } from "../correct/offer-signs.ts";
import { offersIn } from "../correct/offers.ts";
import { type Candidate, whichSigns } from "../correct/which-signs.ts";
import { tellsMoreOrLess } from "../correct/worked-out.ts";
import type { TalkJudges } from "../judges/talk.ts";
import { type Scan, scan } from "../read/scan.ts";
import { namedAs, type Owned, toldBeside } from "./told-beside.ts";

/** The record that a message may put right, with the values that the message names for it. */
export type Meant = {
  readonly shown: Shown;
  /** How long ago it was told of last; nothing for one that was not told of last. */
  readonly minutes: number | null;
  /** No other record told of with it agrees with the message as well. */
  readonly alone: boolean;
  /** The message names its sum as the wrong one. */
  readonly denied: boolean;
  /** How sure that it is this record, if the message puts any right; 0 to 1. */
  readonly sure: number;
  readonly offers: readonly Offer[];
  /** What was to be put in, where no other such intention is as likely meant. */
  readonly wanted: number | null;
  /** The works that it may be about, the likeliest first. */
  readonly works: readonly number[];
  /** Others told of with it that the message puts right as well. */
  readonly besides: readonly Owned[];
};

/** How it does is no sign of which it is: "no" and "back" are verdicts as well. */
const points = (shown: Shown, offers: readonly Offer[]): number =>
  offers.filter(
    (offer) => offer.reckoned !== true && offer.field !== "outcome" && saysSame(offer, shown.fields),
  ).length;

/** "Those wheels", of the bearings where no wheel was told of. */
const isKin = ({ fields }: Shown, offers: readonly Offer[], things: readonly ComponentId[]): boolean =>
  offers.some(
    ({ field, is }) =>
      field === "component" && is !== fields.component && namedAs(is, fields.component, things),
  );

/** "The spray was 65", of what was cleaned with contact spray. */
const isMadeOf = ({ fields }: Shown, stems: ReadonlySet<string>): boolean =>
  shareAny(tellingStems(fields.materials.join(" ")), stems);

/** Of the records told of last the one that the message names most of; the last one of several. */
const ofLast = (text: string, moment: Moment, records: readonly Shown[]) => {
  const [first, ...besides] = toldBeside(text, moment, records);
  if (first !== undefined) return { ...first, alone: true, beside: true, besides };
  const things = records.map(({ fields }) => fields.component);
  const stems = tellingStems(text);
  const changesSum = tellsMoreOrLess(scan(text, moment));
  const all = records.map((shown) => {
    const offers = offersIn(text, moment, shown.fields);
    const alike =
      Number(isKin(shown, offers, things)) +
      Number(isMadeOf(shown, stems)) +
      Number(changesSum && shown.fields.cost !== null);
    return { shown, offers, points: points(shown, offers) + alike };
  });
  const most = Math.max(0, ...all.map((each) => each.points));
  const best = all.filter((each) => each.points === most);
  const meant = best.at(-1);
  return meant === undefined
    ? undefined
    : { shown: meant.shown, offers: meant.offers, alone: best.length === 1, beside: false, besides: [] };
};

const minutesSince = (at: string, moment: Moment): number =>
  Temporal.Instant.from(at).until(Temporal.Instant.from(moment.said)).total("minutes");

type Choice = Candidate & { readonly shown: Shown };

/** What was to be done gives way to the work that did it: "the new regulator went on on the 28th". */
const withoutDone = (choices: readonly Choice[]): readonly Choice[] =>
  choices.filter(
    ({ fields, shown }) =>
      fields.kind !== "todo" ||
      !choices.some(
        (other) =>
          other.fields.kind === "repair" &&
          other.shown.id > shown.id &&
          other.fields.component === fields.component &&
          other.fields.action === fields.action,
      ),
  );

/** "My cousin did the aircon, not me": who did it is said of work that is done. */
const TELLS_DOER =
  /\b(?:(?:not|wasn'?t|was not) (?:me|us|myself)|(?:i|we) didn'?t do (?:it|that|the|them)|did (?:it|that|the \w+) (?:myself|ourselves))\b/i;

const doneOnly = (text: string, choices: readonly Choice[]): readonly Choice[] => {
  const done = choices.filter(({ fields }) => fields.kind === "repair");
  return TELLS_DOER.test(text) && done.length > 0 ? done : choices;
};

/** Less likely than this, no work is meant though just its trouble is told. */
const HARDLY = 0.1;

/** "Flapping all the way home", of what was fastened and not of what was replaced: the one likely work that such trouble undoes. */
const undoneIn = (
  text: string,
  choices: readonly Choice[],
  parts: readonly number[],
  likeliest: number,
): number | undefined => {
  const isUndone = ({ fields }: Choice): boolean => fields.kind === "repair" && undoes(text, fields.action);
  const top = choices[likeliest];
  if (top?.fields.kind !== "repair" || isUndone(top) || surelyNamed(text).length > 0) return undefined;
  const undone = choices.flatMap((each, at) => ((parts[at] ?? 0) > HARDLY && isUndone(each) ? [at] : []));
  return undone.length === 1 ? undone[0] : undefined;
};

/** The one intention to put something in, or the one that is meant at least twice as likely as any other. */
const wantedIn = (choices: readonly Choice[], parts: readonly number[]): number | null => {
  const [first, second] = choices
    .map((each, at) => ({ each, part: parts[at] ?? 0 }))
    .filter(({ each: { fields } }) => fields.kind === "todo" && putsIn(fields.action))
    .toSorted((a, b) => b.part - a.part);
  return first === undefined || (second !== undefined && first.part < 2 * second.part)
    ? null
    : first.each.shown.id;
};

/** As many works as may be offered, each at least so likely. */
const MOST_WORKS = 3;
const MAY_BE = 0.08;

const worksIn = (choices: readonly Choice[], parts: readonly number[]): readonly number[] =>
  choices
    .map(({ fields, shown }, at) => ({ fields, id: shown.id, part: parts[at] ?? 0 }))
    .filter(({ fields, part }) => fields.kind === "repair" && part >= MAY_BE)
    .toSorted((a, b) => b.part - a.part)
    .slice(0, MOST_WORKS)
    .map(({ id }) => id);

/** "No, 121", where use was told as well: a number may be of that. */
const mayBeOfUse = ({ records, usage }: Showing, { numbers, amounts }: Scan): boolean =>
  usage.length > 0 && (records.length === 0 || numbers.length + amounts.length > 0);

/** All records told of at other times that a message names or may speak of, newest first. */
const olderIn = ({ older, spokenOf }: Scene): readonly Shown[] =>
  [...new Map([...older, ...spokenOf].map((each) => [each.id, each])).values()].toSorted(
    (a, b) => b.id - a.id,
  );

/**
 * The record that a message is about if it puts something right: one of those told of last (or replied to), or an older
 * one that it names.
 */
export const meantIn = (
  judges: Pick<TalkJudges, "which" | "spoken">,
  text: string,
  moment: Moment,
  scene: Scene,
): Meant | undefined => {
  const showing = scene.replyTo ?? scene.last;
  const minutes = showing === null ? 0 : minutesSince(showing.at, moment);
  const found = scan(text, moment);
  const last =
    showing === null || mayBeOfUse(showing, found) ? undefined : ofLast(text, moment, showing.records);
  const told = new Set(showing?.records.map(({ id }) => id));
  const older = scene.replyTo === null ? olderIn(scene).filter(({ id }) => !told.has(id)) : [];
  const { tokens } = found;
  const isDenied = ({ fields }: Pick<Shown, "fields">): boolean =>
    deniesSumOf(tokens, offersIn(text, moment, fields), fields);
  const lastMeant =
    last === undefined
      ? undefined
      : { ...last, minutes, sure: 1, denied: isDenied(last.shown), wanted: null, works: [] };
  if (older.length === 0 || last?.beside === true) return lastMeant;
  const choices = doneOnly(
    text,
    withoutDone([
      ...(last === undefined ? [] : [{ ...last, ...last.shown, isLast: true }]),
      ...older.map((shown) => ({ ...shown, shown, isLast: false })),
    ]),
  );
  const denied = choices.filter(isDenied);
  const parts =
    denied.length === 1
      ? choices.map((each) => Number(each === denied[0]))
      : judges.which(whichSigns(text, moment, choices, minutes, judges.spoken(speakingSigns(text))), choices);
  const likeliest = choices.reduce((top, _, at) => ((parts[at] ?? 0) > (parts[top] ?? 0) ? at : top), 0);
  const best = undoneIn(text, choices, parts, likeliest) ?? likeliest;
  const [chosen, sure] = [choices[best], parts[likeliest] ?? 0];
  if (chosen === undefined) return undefined;
  const wanted = wantedIn(choices, parts);
  const works = worksIn(choices, parts);
  if (chosen.isLast) return lastMeant === undefined ? undefined : { ...lastMeant, sure, wanted, works };
  return {
    shown: chosen.shown,
    minutes: null,
    alone: true,
    sure,
    denied: denied.length === 1,
    offers: offersIn(text, moment, chosen.fields),
    wanted,
    works,
    besides: [],
  };
};
