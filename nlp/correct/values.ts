import type { Change } from "../../shared/memory/correction.ts";
import parts from "../../shared/memory/parts.json" with { type: "json" };
import { placeOf } from "../../shared/memory/place.ts";
import { tellingWords } from "../../shared/memory/words.ts";
import type { Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { Action, ComponentId } from "../../shared/vocabulary.ts";
import { deedNamed } from "../ask/deeds.ts";
import { ALL_ENDS, placesSaid } from "../ask/places-said.ts";
import { topicOf } from "../ask/topic.ts";
import { type Scan, scan } from "../read/scan.ts";
import { amountChange } from "./amount.ts";
import { isContainer } from "./containers.ts";
import { doerIn } from "./person.ts";
import type { Strength } from "./pieces.ts";
import { shiftIn } from "./shift.ts";

export type Values = {
  readonly changes: readonly Change[];
  readonly not: Partial<RecordFields>;
  /** Telling words that none of it accounts for. */
  readonly leftover: number;
};

/** How surely a thing must be named to be taken for the right one. */
const NAMED_ENOUGH: Record<Strength, number> = { strong: 0.55, weak: 0.75, none: 0.9 };

const DENIED = /\b(?:not|instead of|rather than|wasnt|isnt|werent|arent|didnt|never|nor)\b/;

type Sides = { readonly right: string; readonly wrong: string };

/** "Just the lap sealant, the butyl tape never got opened": all that was used, and what was not. */
const ONLY =
  /^(.*\b(?:just|only) (?:the |a |some |my |our )?(?:\w+ ){1,4}?)((?:the|that|no) (?:\w+ ){1,4}?)(?:never|didnt|wasnt|werent|isnt|stayed|went unused|did not|was not|was never|was left)\b.*$/;

/** "X, not Y" and "not Y but X". */
const sidesOf = (body: string): Sides => {
  const [, used, unused] = ONLY.exec(body) ?? [];
  if (used !== undefined && unused !== undefined) return { right: used.trim(), wrong: unused.trim() };
  const denial = DENIED.exec(body);
  if (denial === null) return { right: body, wrong: "" };
  const after = body.slice(denial.index + denial[0].length);
  const but = /\b(?:but|it was|its|rather|i meant)\b/.exec(after);
  const right = but === null ? "" : after.slice(but.index + but[0].length);
  const wrong = but === null ? after : after.slice(0, but.index);
  return { right: `${body.slice(0, denial.index)} ${right}`.trim(), wrong: wrong.trim() };
};

const SMALL =
  /\b(?:after all|in the end|to be (?:exact|precise|fair|clear|honest|sure|accurate)|exact|precise|on the nose|i think|i believe|i guess|i reckon|if i remember|or so|give or take|thereabouts|costing|bill|receipt|invoice|tax|says|shows|turned out|ended up|end|call|like|back|both|them|those|shop|handyman|supposed|really|happened|to be|days?|weeks?|months?|years?|later|earlier|before|after|than|component|material|one|ones|side|job|work|used|using|use|cost|came|come|total|instead|paid|pay|price|date|done|did|happened|actually|really|thing|part|place|all in|all told|that|too|also|as well|it|guy|meant|mean|said|should|supposed|meant|only|just|more like|closer to|about|exactly|bit|kind|brand|stuff|called|put|on|in)\b/g;

const blanked = (text: string, spans: readonly { readonly start: number; readonly end: number }[]): string =>
  [...spans].reduce(
    (rest, { start, end }) => rest.slice(0, start) + " ".repeat(end - start) + rest.slice(end),
    text,
  );

const spanOfTokens = (found: Scan, { from, to }: { readonly from: number; readonly to: number }) => ({
  start: found.tokens[from]?.start ?? 0,
  end: found.tokens[to - 1]?.end ?? 0,
});

const dateChange = (body: string, found: Scan): readonly Change[] => {
  const shift = shiftIn(body);
  if (shift !== undefined) return [{ change: "date", to: shift }];
  const time = found.times
    .map((ref) => ref.time)
    .find(({ role }) => role === "point" || role === "after-that");
  return time === undefined ? [] : [{ change: "date", to: { on: time.edtf } }];
};

/** The thing that words name, as surely as asked; undefined where none is. */
export const componentIn = (text: string, least: number): ComponentId | undefined => {
  const [best] = topicOf(text).named;
  return best !== undefined && best.sure >= least ? best.component : undefined;
};

const USED = /\b(?:used|with|using|put|some|a|an|new|was|its|is|made of|stuff)\b/;

const stuffIn = (found: Scan, hasThing: boolean): readonly string[] => {
  const stuff = found.materials.filter(({ group }) => group !== null && group !== "part");
  const parts =
    hasThing || !USED.test(found.text) ? [] : found.materials.filter(({ group }) => group === "part");
  return (stuff.length > 0 ? stuff : parts).map(({ name }) => name).filter((name) => !isContainer(name));
};

const materialChange = (found: Scan, wrong: Scan, hasThing: boolean): readonly Change[] => {
  const add = stuffIn(found, hasThing);
  const drop = stuffIn(wrong, false);
  if (add.length + drop.length === 0) return [];
  const how = /\b(?:also|too|as well|plus|forgot)\b/.test(found.text) ? "also" : "instead";
  return [{ change: "materials", drop, add, how }];
};

const PLACE_LEFT_OVER = /^(?:it|that|this)?\s*(?:was|is|were|should be)?\s*(?:on|at|in)?\s*(?:the|my)?\s*/;

const OTHER_SIDE = /^(?:(?:it|that) was )?(?:on )?(?:the )?(other (?:side|end))$/;

/** "He gave us the twenty back": someone does something, and it is no place. */
const TALK = /\b(?:i|you|he|she|we|they|it|us|me|him) \w|\b(?:gave|got|came|went|paid|told|said)\b/;

const whereIn = (body: string): string | null => {
  const other = OTHER_SIDE.exec(body)?.[1];
  if (other !== undefined) return other;
  if (topicOf(body).where.length === 0 || placeOf(body).size === 0) return null;
  const said = body
    .replace(PLACE_LEFT_OVER, "")
    .replace(/\b(?:one|job)\b.*$/, "")
    .trim();
  return said === "" || TALK.test(said) ? null : said;
};

const actionIn = (body: string, wrong: string): Action | undefined =>
  topicOf(body).actions[0] ?? (denials(wrong).action === undefined ? undefined : deedNamed(body));

/** "The one over the bed": only the place is put right. */
const ONE_AT =
  /^(?:(?:it|that) (?:was|is) |(?:it|that)s )?(?:the )?one ((?:by|over|under|in|at|on|near|next to|behind|above|below|beside|inside|outside|up|down)\b.+)$/;

/** "That was the left arm": which of the pieces of the thing. */
const PIECE_AT = new RegExp(
  `^(?:(?:it|that) was )?(?:on )?the ([a-z]+(?: [a-z]+)? (?:${parts.parts.join("|")}))$`,
);

/** What each waste tank has of its own: which of them is told by the tank. */
const OF_TANKS: ReadonlySet<ComponentId> = new Set<ComponentId>(["dump-valve", "tank-sensor"]);
const TANK =
  /\b(?:black|gr[ae]y|fresh|galley|kitchen|shower|toilet)(?: (?:water|waste))?(?: tank| side)?(?= )/;

/** "The bottom bracket", "the left arm", and not the entry door. */
const tellsSide = (at: string): boolean =>
  placesSaid(at) !== null || placeOf(at).has("height") || placeOf(at).has("along");

/** Stuff may be called after a thing: "lithium grease". */
const withoutStuff = (text: string, found: Scan): string =>
  blanked(
    text,
    found.materials
      .filter(({ group }) => group !== null && group !== "part")
      .map((material) => spanOfTokens(found, material)),
  );

const thingChanges = (right: string, found: Scan, wrong: Scan, strength: Strength): readonly Change[] => {
  const at = ONE_AT.exec(right)?.[1] ?? PIECE_AT.exec(right)?.[1];
  if (at !== undefined && (tellsSide(at) || !PIECE_AT.test(right)))
    return [{ change: "fields", to: { where: at } }];
  const place = NOT_AT.test(wrong.text) ? LAST_PLACE.exec(right)?.[1]?.trim() : undefined;
  if (place !== undefined) return [{ change: "fields", to: { where: place } }];
  const stuff = stuffIn(found, false);
  const least = stuff.length > 0 ? 0.95 : NAMED_ENOUGH[strength];
  const component = componentIn(stuff.length > 0 ? withoutStuff(right, found) : right, least);
  const where =
    component === undefined && stuff.length === 0
      ? whereIn(right)
      : component === undefined
        ? null
        : ((OF_TANKS.has(component) ? TANK.exec(right)?.[0] : undefined) ?? placesSaid(right));
  const action = actionIn(right, wrong.text);
  const to = {
    ...(component === undefined ? {} : { component }),
    ...(where === null ? {} : { where }),
    ...(action === undefined ? {} : { action }),
  };
  const fields: readonly Change[] = Object.keys(to).length > 0 ? [{ change: "fields", to }] : [];
  return [...fields, ...materialChange(found, wrong, component !== undefined || action !== undefined)];
};

const leftoverIn = (right: string, found: Scan): number => {
  const spans = [
    ...found.times.map(({ time }) => time.span),
    ...[...found.amounts, ...found.materials, ...found.components, ...found.numbers].map((ref) =>
      spanOfTokens(found, ref),
    ),
  ];
  const rest = topicOf(blanked(right, spans).replace(ALL_ENDS, " ").replace(SMALL, " "));
  return tellingWords(rest.words.join(" ")).length;
};

/** "On the cupboard over the bed, not over the stove": a place that it was not at. */
const AT = "(?:over|above|under|below|by|near|beside|behind|next to|in front of|in|at|on|inside)";
const NOT_AT = new RegExp(`^${AT} (?:the|my|our) \\w+`);
const LAST_PLACE = new RegExp(`^.*\\b(${AT} (?:the|my|our) (?:\\w+ ?){1,3})$`);

const denials = (wrong: string): Partial<RecordFields> => {
  if (NOT_AT.test(wrong)) return {};
  const isStuff = topicOf(wrong).materials.length > 0;
  const action = wrong === "" || isStuff ? undefined : (topicOf(wrong).actions[0] ?? deedNamed(wrong));
  if (action !== undefined) return { action };
  const component = wrong === "" ? undefined : componentIn(wrong, 0.75);
  return component === undefined ? {} : { component };
};

const alsoUsed = (change: Change, said: string): Change =>
  change.change === "materials" &&
  /^(?:also|plus|and|oh and|forgot)\b|\b(?:also|too|as well|plus)\b/.test(said)
    ? { ...change, how: "also" }
    : change;

/** What a stretch says that something was, and was not; `said` has its openings still ("also used primer"). */
export const valuesIn = (body: string, moment: Moment, strength: Strength, said = body): Values => {
  const doer = doerIn(body, strength);
  const { right, wrong } = sidesOf(body);
  if (doer !== undefined) {
    const by = doer === "somebody" ? "someone else" : doer.by;
    return { changes: [{ change: "done-by", to: by }], not: {}, leftover: 0 };
  }
  const found = scan(right, moment);
  const denied = scan(wrong, moment);
  const changes = [
    ...dateChange(right, found),
    ...amountChange(right, found, denied),
    ...thingChanges(right, found, denied, strength).map((change) => alsoUsed(change, said)),
  ];
  return { changes, not: denials(wrong), leftover: leftoverIn(right, found) };
};
