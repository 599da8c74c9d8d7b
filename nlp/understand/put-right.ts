import type { Change, Correction, Target } from "../../shared/memory/correction.ts";
import type { Intent } from "../../shared/memory/intent.ts";
import { isSameHead } from "../../shared/memory/materials.ts";
import type { Shown } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import type { Offer } from "../correct/offer.ts";
import { type OfferScene, saysSame } from "../correct/offer-signs.ts";
import { withOtherSum } from "../correct/other-sum.ts";
import { isNoOtherThing } from "../correct/other-thing.ts";
import { plain } from "../correct/pieces.ts";
import { hasDeed } from "../correct/signs.ts";
import { offerScene, orRuled, weighedChanges } from "../correct/weighed.ts";
import type { MessageKind, TalkJudges } from "../judges/talk.ts";
import { scan } from "../read/scan.ts";
import { asOffered } from "./as-offered.ts";
import { doneInstead, tellsInstead, withoutPutIn } from "./done-instead.ts";
import type { Meant } from "./lately.ts";
import { isPointedAt } from "./pointed-at.ts";
import { sumRestated } from "./sum-restated.ts";
import { TELLS } from "./tells.ts";
import type { Owned } from "./told-beside.ts";
import { isAtOnce, struckVerdict, wentOtherwise } from "./went-otherwise.ts";

/** From here on, the record is taken away, or what a message names is put in place of what the record says. */
const EVEN = 0.5;
const ENOUGH = 0.5;
/** The same for words in which the reader finds work, or that only say how it holds. */
const ENOUGH_FOR_WORK = 0.67;
/** The same where the very sum on record is told to be wrong. */
const ENOUGH_WHERE_DENIED = 0.2;
/** From here on, it surely puts something right. */
const SURELY = 0.75;
/** The same for words in which the reader finds work, and the rules nothing to put right. */
const SURELY_THOUGH_TOLD = 0.97;
const isSureThoughTold = (ruled: Intent, { correction }: Taken["kind"]): boolean =>
  ruled.is !== "correct" && correction > SURELY_THOUGH_TOLD;
/** Below this, words that the rules take for a correction tell something. */
const HARDLY = 0.2;

const corrects = (target: Target, changes: readonly Change[]): Intent => ({
  is: "correct",
  correction: { target, changes, not: {} },
  announced: false,
  rest: null,
});

/** "It wasn't chain oil, now that I look. Copper grease, it says.": what went in instead comes later, and is no note. */
const onlyEmpties = (intent: Intent): boolean =>
  intent.is === "correct" &&
  intent.correction.changes.every((change) => change.change === "materials" && change.add.length === 0);
const ALL_OF_IT = 0.9;

const takesAway = (intent: Intent): boolean =>
  intent.is === "correct" && intent.correction.changes.some(({ change }) => change === "remove");

/** "The same tire I gave you last week, not another one": one record of both, and none taken away. */
const joins = (intent: Intent): boolean =>
  intent.is === "correct" && intent.correction.changes.some(({ change }) => change === "join");

const NOT_YET = /\b(?:haven'?t|hasn'?t|have not|has not|not|didn'?t)\b.*\byet\b/i;
/** "Haven't bought it yet", of what is meant to be done: it stays so. */
const isNotYet = (text: string, { fields }: Shown): boolean => fields.kind === "todo" && NOT_YET.test(text);

/** What a message is taken for, and whether it tells of work or use as well. */
export type Taken = { readonly kind: Readonly<Record<MessageKind, number>>; readonly tells: boolean };

const onlyVerdict = (changes: readonly Change[]): boolean =>
  changes.every(
    (change) => change.change === "fields" && Object.keys(change.to).every((field) => field === "outcome"),
  );

/** The one sum or day that is named and not on record. */
const onlyValue = (offers: readonly Offer[], fields: Shown["fields"]): readonly Change[] => {
  const other = offers.filter((each) => COUNTED.has(each.field) && !saysSame(each, fields));
  const [only] = other;
  return only !== undefined && new Set(other.map(({ field, is }) => `${field} ${is}`)).size === 1
    ? [only.change]
    : [];
};
const COUNTED: ReadonlySet<string> = new Set(["cost", "date"]);

/** What each of several records told of at once is put right to. */
const eachPutRight = (
  all: readonly Owned[],
  text: string,
  moment: Moment,
  judges: Pick<TalkJudges, "offer">,
): readonly Correction[] =>
  all.flatMap(({ shown, offers }) => {
    const said = offers.filter(({ reckoned }) => reckoned !== true);
    const bench = offerScene(scan(text, moment).tokens, said, shown.fields, [], shown.words ?? "");
    const weighed = weighedChanges(bench, judges.offer, true);
    const changes = weighed.length > 0 ? weighed : onlyValue(said, shown.fields);
    return changes.length === 0
      ? []
      : [{ target: { by: "record", record: shown.id }, changes, not: {} } satisfies Correction];
  });

/** "'Twas his young fella done it": who did the work. */
const SOMEBODY_DID =
  /\b(?:'?twas|it was|that was|they were) .{2,40}? (?:who |that )?(?:did|done|fixed|fitted|put|changed|replaced)\b/i;

/** "No, leave it how it stands". */
const KEEPS =
  /\b(?:leave|keep|let) (?:it|that|this|them|those) (?:all )?(?:(?:just )?(?:how|as|like|where) (?:it|they|that)|the way|be\b|alone\b|stand\b|there\b)/i;

/** "A brass elbow": nothing else in the words names another thing than stuff or a place. */
const isNamedAside = (component: string | undefined, scene: OfferScene): boolean => {
  const named = scene.offers.filter(({ field, is }) => field === "component" && is === component);
  return named.length > 0 && named.every((offer) => isNoOtherThing(offer, scene));
};

/** "Bearings RH, sorry": the thing on record, named to say which record is meant, is no change. */
const withoutPointing = (
  changes: readonly Change[],
  { shown, offers }: Meant,
  text: string,
  moment: Moment,
): readonly Change[] => {
  const scene = offerScene(scan(text, moment).tokens, offers, shown.fields, changes, shown.words ?? "");
  return changes.flatMap((change): readonly Change[] => {
    if (change.change !== "fields") return [change];
    const { component } = change.to;
    if (component !== shown.fields.component && !isNamedAside(component, scene)) return [change];
    const others = Object.entries(change.to).filter(([field]) => field !== "component");
    return others.length === 0 ? [] : [{ change: "fields", to: Object.fromEntries(others) }];
  });
};

/** What is left to be put right where no other thing is named: the place, or stuff of the sort on record. */
const placeOrStuff = (offers: readonly Offer[], fields: Shown["fields"]): Offer | undefined => {
  const other = offers.filter((each) => !saysSame(each, fields));
  return (
    other.find(({ field }) => field === "where") ??
    other.find(
      ({ field, is }) => field === "material" && fields.materials.some((kept) => isSameHead(is, kept)),
    )
  );
};

/** In minutes: so long what was told may be said to be other work. */
const HALF_A_DAY = 12 * 60;

/** "Not just the left, did the right one too": more work. */
const ALSO_DONE = /^\W*(?:(?:and|oh|um|uh) )*not (?:just|only)\b.*\b(?:did|done|too|as well|also)\b/i;

/** "It's the same alarm, I only reset it": other work, and no other record to join. */
const otherWork = (text: string, offers: readonly Offer[], { action }: Shown["fields"]): Offer | undefined =>
  ONLY.test(text) ? offers.find(({ field, is }) => field === "action" && is !== action) : undefined;
const ONLY = /\b(?:only|just) \w+/i;

/** What a message puts right in the record told of last, where it is taken for a correction; else what the rules say. */
export const putRight = (
  byRules: Intent,
  { kind, tells }: Taken,
  meant: Meant,
  text: string,
  moment: Moment,
  judges: TalkJudges,
): Intent => {
  const { shown, minutes, alone, offers } = meant;
  const ruled = asOffered(byRules, offers);
  const target: Target = alone ? { by: "record", record: shown.id } : { by: "last" };
  const isAimed =
    ruled.is === "correct" &&
    ruled.correction.target.by !== "last" &&
    minutes !== null &&
    withoutPointing(ruled.correction.changes, meant, text, moment).length > 0;
  const instead = tellsInstead(text);
  const named =
    instead || (offers.some(({ field, is }) => field === "who" && is === "other") && SOMEBODY_DID.test(text));
  if (ALSO_DONE.test(text)) return ruled.is === "correct" ? TELLS : ruled;
  if (joins(ruled)) {
    const other = otherWork(text, offers, shown.fields);
    return other === undefined ? ruled : corrects(target, [other.change]);
  }
  if (!isPointedAt(meant, text)) return ruled.is === "correct" ? TELLS : ruled;
  if (isNotYet(text, shown)) return TELLS;
  const struck = struckVerdict(meant, scan(text, moment));
  if (struck !== undefined) return corrects(target, [struck]);
  if (kind.removal > EVEN && kind.removal > kind.correction && !named && !KEEPS.test(text))
    return takesAway(ruled) && (isAimed || minutes !== null)
      ? ruled
      : corrects(isAimed ? ruled.correction.target : target, [{ change: "remove" }]);
  const [first, ...also] =
    meant.besides.length > 0 && kind.correction > ENOUGH
      ? eachPutRight([meant, ...meant.besides], text, moment, judges)
      : [];
  if (first !== undefined && also.length > 0)
    return { is: "correct", correction: first, also, announced: true, rest: null };
  const isWhole = kind.correction > ALL_OF_IT && (onlyEmpties(ruled) || !hasDeed(plain(ruled.rest ?? "")));
  const tellsMore = ruled.rest !== null && tells && !isWhole;
  if (isAimed || (tellsMore && minutes !== null)) return ruled;
  const sum = ruled.is === "tell" ? sumRestated(text, meant) : undefined;
  if (sum !== undefined)
    return corrects({ by: "record", record: shown.id }, [{ change: "fields", to: { cost: sum } }]);
  const isNews = tells && ruled.is === "tell";
  const denied = meant.denied || (named && kind.removal > HARDLY);
  const least = denied ? ENOUGH_WHERE_DENIED : isNews ? ENOUGH_FOR_WORK : ENOUGH;
  if (kind.correction > least || (instead && kind.removal > EVEN)) {
    const before = ruled.is === "correct" ? ruled.correction.changes : [];
    const bench = offerScene(scan(text, moment).tokens, offers, shown.fields, before, shown.words ?? "");
    const surely = kind.correction > SURELY && (!tells || isSureThoughTold(ruled, kind));
    const changes = orRuled(weighedChanges(bench, judges.offer, surely), before);
    const isWrongly =
      isAtOnce(minutes) && (kind.correction > SURELY_THOUGH_TOLD || (!tells && ruled.is !== "verdict"));
    const isWord =
      onlyVerdict(changes) &&
      !isWrongly &&
      (isNews || ruled.is === "verdict" || kind.correction < ENOUGH_FOR_WORK);
    if (changes.length > 0 && !isWord) return corrects(target, withoutPutIn(changes, text, shown.fields));
  }
  const done = minutes !== null && minutes < HALF_A_DAY ? doneInstead(text, offers, shown.fields) : undefined;
  if (done !== undefined) return corrects(target, withoutPutIn([done.change], text, shown.fields));
  const otherwise =
    !tells && isAtOnce(minutes)
      ? wentOtherwise(offers, shown.fields, kind.correction + kind.word)
      : undefined;
  if (otherwise !== undefined) return corrects(target, [otherwise]);
  if (ruled.is !== "correct") return ruled;
  if (kind.correction + kind.removal < HARDLY) return TELLS;
  const changes = withOtherSum(ruled.correction.changes, offers, shown.fields);
  const real = withoutPointing(changes, meant, text, moment);
  if (real.length === 0) {
    const other = placeOrStuff(offers, shown.fields);
    return other === undefined ? TELLS : corrects(target, [other.change]);
  }
  const aim = real.length < changes.length ? target : ruled.correction.target;
  return { ...ruled, correction: { ...ruled.correction, target: aim, changes: real } };
};
