import { CLAIMS } from "../lexicon/lexicon.ts";
import { singular } from "../lexicon/tokens.ts";
import type { Build } from "./build.ts";
import { clauseAt } from "./ground.ts";
import { type Made, mainDeed } from "./made.ts";
import { isMuted } from "./muted.ts";
import type { Stretch } from "./scan.ts";
import { sizeOf } from "./sizes.ts";
import { dedupe, type Used } from "./uses.ts";
import { startingIn } from "./windows.ts";
import { DETERMINERS } from "./words.ts";

/** Something named near a piece of work that may have gone in or on. */
export type MaterialChoice = Stretch & {
  readonly name: string;
  readonly group: string;
  /** Whether the rules take it. */
  readonly ruled: boolean;
};

const BACK = 16;
const AHEAD = 30;

const placeOf = (made: Made): number => mainDeed(made)?.at ?? made.span.from;

const overlaps = (one: Stretch, other: Stretch): boolean => one.from < other.to && other.from < one.to;

/**
 * What may have gone in or on: what the rules take, and every other material named near the deed. What the same deed
 * was also done to is none: "a new hose and regulator".
 */
export const materialChoices = (
  made: Made,
  beside: readonly (Made | undefined)[],
  { scan, dead }: Build,
): MaterialChoice[] => {
  const at = placeOf(made);
  const partners = beside.filter((other) => other !== undefined && placeOf(other) === at);
  const isPartner = (ref: Stretch): boolean =>
    partners.some((other) => other !== undefined && overlaps(other.told.topic.ref, ref));
  const near = startingIn(scan.materials, at - BACK, at + AHEAD).filter((ref) => dead[ref.from] !== 1);
  const ruled = made.used.refs.map(({ from, to, name }): MaterialChoice => {
    const group = startingIn(scan.materials, from, from + 1)[0]?.group ?? "phrase";
    return { from, to, name, group, ruled: true };
  });
  const others = near
    .filter((ref) => !ruled.some((each) => overlaps(each, ref)))
    .map(
      ({ from, to, name, group }): MaterialChoice => ({
        from,
        to,
        name,
        group: group ?? "other",
        ruled: false,
      }),
    );
  const deed = mainDeed(made);
  const isMine = (ref: Stretch): boolean => deed?.item !== true || overlaps(deed, ref);
  return [...ruled, ...others].filter((choice) => isMine(choice) && !isPartner(choice));
};

/** How far a place is from what is named, in words. */
const awayFrom = ({ from, to }: Stretch, at: number): number => (at < from ? from - at : at - to + 1);

/** Whether the work told before or behind is nearer to what is named, and whether it tells of it. */
const ownerSigns = (made: Made, choice: MaterialChoice, beside: readonly (Made | undefined)[]): string[] => {
  const mine = awayFrom(choice, placeOf(made));
  const others = beside.flatMap((other, nth) =>
    other === undefined ? [] : [{ other, side: nth === 0 ? "previous" : "next" }],
  );
  const nearer = others.filter(({ other }) => awayFrom(choice, placeOf(other)) < mine);
  const within = others.find(({ other }) => choice.from >= other.span.from && choice.from < other.span.to);
  const owner =
    nearer.length === 0
      ? "mine"
      : nearer.map(({ side, other }) => `${side} ${other.kind} ${String(other.action)}`).join(" ");
  const same = nearer.some(({ other }) => other.told.topic.component === made.told.topic.component);
  return [
    `owner=${owner}`,
    `owner=${nearer.length === 0 ? "mine" : String(same)} within=${within?.side ?? "none"}`,
    `owner=${nearer.length === 0 ? "mine" : String(same)} kind=${made.kind} action=${String(made.action)}`,
  ];
};

/** As far behind stuff, in words, as it may be told to have let go. */
const LET_GO = 7;

/** What was told of how it did, or of trouble, between stuff and the work, or right behind it: "the butyl gave up". */
const letGoSigns = (choice: MaterialChoice, at: number, { scan }: Build): string[] => {
  const to = choice.from < at ? at : choice.to + LET_GO;
  const verdict = startingIn(scan.verdicts, choice.to, to)[0]?.value.outcome ?? "none";
  const trouble = startingIn(scan.faults, choice.to, Math.min(to, choice.to + LET_GO)).length > 0;
  const side = choice.from < at ? "before" : "after";
  return [
    `let go=${side} ${verdict}`,
    `let go=${side} ${verdict} ${String(trouble)} group=${choice.group}`,
    `let go=${side} ${verdict} gap=${sizeOf(Math.max(0, at - choice.to))}`,
  ];
};

/** The signs, as names, that tell whether something went in or on in a piece of work. */
export const materialSigns = (
  made: Made,
  choice: MaterialChoice,
  choices: readonly MaterialChoice[],
  beside: readonly (Made | undefined)[],
  build: Build,
): string[] => {
  const { scan, index, clauses, deeds, muted } = build;
  const at = placeOf(made);
  const { component } = made.told.topic;
  const side = choice.from < at ? "before" : "after";
  const [left, right] = side === "before" ? [choice.to, at] : [at + 1, choice.from];
  const word = (place: number): string => scan.tokens[place]?.norm ?? "";
  const last = singular(choice.name.split(" ").at(-1) ?? "");
  const clause = clauseAt({ clauses, index }, choice.from);
  const here = index[choice.from] === index[at];
  const apart = sizeOf(Math.abs((index[choice.from] ?? 0) - (index[at] ?? 0)));
  const between = startingIn(deeds, left, right).filter((deed) => deed.at >= left && deed.at < right);
  const done = sizeOf(between.filter((deed) => deed.status === "done").length);
  const mention = startingIn(scan.components, choice.from - 3, choice.to).find((ref) =>
    overlaps(ref, choice),
  );
  const named = mention === undefined ? "none" : mention.id === component ? "own" : "other";
  const claimed = CLAIMS.get(component)?.has(last) === true;
  const before = word(choice.from - 1);
  const article = DETERMINERS.has(before) ? before : "-";
  const lead = article === "-" ? before : word(choice.from - 2);
  const inside = choice.from >= made.span.from && choice.from < made.span.to;
  const fault = startingIn(scan.faults, choice.to, choice.to + 4).length > 0;
  const ruled = `ruled=${String(choice.ruled)}`;
  const action = made.action ?? "none";
  const others = choices.filter((each) => each !== choice && each.ruled).length;
  const deed = made.event?.deeds.find((each) => each.at === at);
  const sense = deed?.sense ?? "none";
  const where = `${side} ${apart}`;
  return [
    ruled,
    `${ruled} group=${choice.group}`,
    `${ruled} kind=${made.kind}`,
    `${ruled} action=${action}`,
    `${ruled} where=${where}`,
    `${ruled} done=${done}`,
    `${ruled} named=${named}`,
    `${ruled} lead=${lead}`,
    `${ruled} article=${article}`,
    `${ruled} others=${sizeOf(others)}`,
    `${ruled} inside=${String(inside)}`,
    `${ruled} muted=${String(isMuted(muted, choice.from))}`,
    `${ruled} claimed=${String(claimed)}`,
    `${ruled} sense=${sense}`,
    `last=${last}`,
    `${ruled} last=${last}`,
    `last=${last} action=${action}`,
    `last=${last} component=${component}`,
    `last=${last} lead=${lead}`,
    `group=${choice.group} action=${action}`,
    `group=${choice.group} action=${action} where=${where}`,
    `group=${choice.group} component=${component}`,
    `group=${choice.group} lead=${lead}`,
    `group=${choice.group} named=${named} action=${action}`,
    `group=${choice.group} sense=${sense} side=${side}`,
    `where=${where} done=${done}`,
    `where=${where} here=${String(here)} action=${action}`,
    `gap=${side} ${sizeOf(right - left)}`,
    `gap=${side} ${sizeOf(right - left)} done=${done}`,
    `lead=${lead} side=${side}`,
    `lead=${lead} article=${article}`,
    `article=${article} named=${named} action=${action}`,
    `named=${named} action=${action}`,
    `opener=${word(clause.from)} side=${side}`,
    `next=${word(choice.to)}`,
    `next=${word(choice.to)} side=${side}`,
    `fault=${String(fault)} side=${side}`,
    `verb=${word(at)} group=${choice.group}`,
    `verb=${word(at)} last=${last}`,
    `words=${sizeOf(choice.to - choice.from)} ${ruled}`,
    ...choice.name.split(" ").map((each) => `word=${each}`),
    ...ownerSigns(made, choice, beside),
    ...letGoSigns(choice, at, build),
  ];
};

/** What a piece of work used, with what the judges take of what was named; a material that only the verb tells stays. */
export const usedOf = (used: Used, taken: readonly MaterialChoice[]): Used => {
  const inVerb = used.refs.length === 0 ? used.names : [];
  return { ...used, refs: taken, names: dedupe([...inVerb, ...taken.map((each) => each.name)]) };
};
