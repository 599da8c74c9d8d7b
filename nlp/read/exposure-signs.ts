import type { Exposure } from "../../shared/record.ts";
import type { Build } from "./build.ts";
import { type Exposed, isFill, LASTING_WORDS } from "./exposures.ts";
import { clauseAt, wordAt } from "./ground.ts";
import { type Made, mainDeed } from "./made.ts";
import { isRigUse } from "./rig-use.ts";
import type { Stretch } from "./scan.ts";
import { countedUses, singleUses, timesFilled } from "./single-uses.ts";
import { sizeOf } from "./sizes.ts";
import { startingIn } from "./windows.ts";

/** Use or time that may have passed since a piece of work. */
export type ExposureChoice = Exposed & {
  readonly ruled: boolean;
  readonly by: "amount" | "time" | "nth" | "single";
};

const BACK = 12;
const AHEAD = 50;

const placeOf = (made: Made): number => mainDeed(made)?.at ?? made.span.from;
const overlaps = (one: Stretch, other: Stretch): boolean => one.from < other.to && other.from < one.to;
const alike = (one: Exposure, other: Exposure): boolean =>
  one.unit === other.unit && one.count === other.count;

/** All use and time that is told near a record, what the rules take first. */
export const exposureChoices = (made: Made, { scan, times, dead }: Build): ExposureChoice[] => {
  const at = placeOf(made);
  const [from, to] = [Math.max(0, Math.min(at - BACK, made.span.from)), at + AHEAD];
  const amounts = startingIn(scan.amounts, from, to).flatMap((amount): ExposureChoice[] => {
    const { what, value: count } = amount;
    if (what === "money" || what === "reading" || dead[amount.from] === 1) return [];
    const value = { count, unit: isFill(amount, scan) ? ("fills" as const) : what };
    return [{ value, at: { from: amount.from, to: amount.to }, ruled: false, by: "amount" }];
  });
  const lasted = startingIn(times, from, to).flatMap((time): ExposureChoice[] => {
    const { lasting } = time.time;
    return lasting === undefined
      ? []
      : [{ value: lasting, at: { from: time.from, to: time.to }, ruled: false, by: "time" }];
  });
  const ruled = made.exposure;
  const choices: ExposureChoice[] = ruled.map((each) => ({
    ...each,
    at: { from: each.at.from, to: each.at.to },
    ruled: true,
    by: lasted.some((time) => time.at.from === each.at.from) ? "time" : "amount",
  }));
  for (const each of [...lasted, ...amounts])
    if (!choices.some((other) => overlaps(other.at, each.at) && alike(other.value, each.value)))
      choices.push(each);
  for (const each of countedUses(scan, { from, to }))
    if (dead[each.at.from] !== 1 && !choices.some((other) => overlaps(other.at, each.at)))
      choices.push({ ...each, ruled: false, by: "nth" });
  for (const each of [...singleUses(scan, { from, to }), ...timesFilled(scan, { from, to })])
    if (dead[each.at.from] !== 1 && !choices.some((other) => overlaps(other.at, each.at)))
      choices.push({ ...each, ruled: false, by: "single" });
  return choices;
};

/** The signs, as names, that tell whether use or time passed since a record's own work. */
export const exposureSigns = (
  made: Made,
  next: Made | undefined,
  choice: ExposureChoice,
  build: Build,
): string[] => {
  const { scan, index, deeds } = build;
  const place = placeOf(made);
  const { from, to } = choice.at;
  const { unit, count } = choice.value;
  const side = from < place ? "before" : "after";
  const [left, right] = side === "before" ? [to, place] : [place + 1, from];
  const apart = `${side} ${sizeOf(Math.abs((index[from] ?? 0) - (index[place] ?? 0)))}`;
  const between = startingIn(deeds, left, right).filter((deed) => deed.at >= left && deed.at < right);
  const done = sizeOf(between.filter((deed) => deed.status === "done").length);
  const names = sizeOf(
    startingIn(scan.components, left, right).filter(
      (ref) => ref.id !== made.told.topic.component && !ref.weak,
    ).length,
  );
  const clause = clauseAt(build, from);
  const said = startingIn(scan.verdicts, clause.from, clause.to).at(-1)?.value.outcome ?? "none";
  const after = startingIn(scan.verdicts, to, to + AFTER)[0]?.value.outcome ?? "none";
  const before = startingIn(scan.verdicts, from - AFTER, from).at(-1)?.value.outcome ?? "none";
  const passed = next !== undefined && from >= placeOf(next);
  const again = next?.told.topic.component === made.told.topic.component ? next.kind : "other";
  const amount = startingIn(scan.amounts, from, from + 1)[0];
  const ofRig = amount !== undefined && isRigUse(scan, amount, clause);
  const role = startingIn(build.times, from - 3, to).find((time) => overlaps(time, choice.at))?.time.role;
  const lasting = scan.tokens
    .slice(Math.max(0, from - 4), from)
    .some((token) => LASTING_WORDS.has(token.norm));
  const within = scan.tokens.slice(left, right).map(({ norm }) => norm);
  const since = `since=${String(within.includes("since"))} ${side}`;
  const ruled = `ruled=${String(choice.ruled)}`;
  const inside = `inside=${String(from >= made.span.from && from < made.span.to)}`;
  const outcome = made.judged?.outcome ?? "none";
  const about = scan.tokens.slice(clause.from, clause.to).map((token) => token.norm);
  return [
    ruled,
    `${ruled} unit=${unit} by=${choice.by}`,
    `${ruled} apart=${apart}`,
    `${ruled} done=${done} names=${names}`,
    `${ruled} passed=${String(passed)}`,
    `${ruled} ${inside}`,
    `${ruled} outcome=${outcome}`,
    `${ruled} role=${role ?? "none"}`,
    `unit=${unit} by=${choice.by}`,
    since,
    `${since} done=${done}`,
    `${since} apart=${apart}`,
    `${since} by=${choice.by} right=${wordAt(scan, to)}`,
    `since behind=${String(scan.tokens.slice(to, to + AFTER).some(({ norm }) => norm === "since"))} ${apart}`,
    `by=${choice.by} apart=${apart}`,
    `by=${choice.by} before=${before} gap=${side} ${sizeOf(right - left)}`,
    `by=${choice.by} lead=${wordAt(scan, from)} unit=${unit}`,
    `by=${choice.by} next=${String(passed)} again=${again}`,
    `unit=${unit} lasting=${String(lasting)}`,
    `unit=${unit} rig=${String(ofRig)}`,
    `unit=${unit} said=${said}`,
    `unit=${unit} after=${after}`,
    `unit=${unit} before=${before}`,
    `unit=${unit} outcome=${outcome}`,
    `unit=${unit} apart=${apart}`,
    `unit=${unit} left=${wordAt(scan, from - 1)}`,
    `unit=${unit} right=${wordAt(scan, to)}`,
    `unit=${unit} action=${made.action ?? "none"}`,
    `apart=${apart} done=${done}`,
    `apart=${apart} names=${names}`,
    `apart=${apart} passed=${String(passed)}`,
    `passed=${String(passed)} again=${again}`,
    `gap=${side} ${sizeOf(right - left)}`,
    `${inside} done=${done}`,
    `said=${said} outcome=${outcome}`,
    `before=${before} after=${after}`,
    `before=${before} gap=${side} ${sizeOf(right - left)}`,
    `kind=${made.kind} ${ruled}`,
    `left=${wordAt(scan, from - 1)}`,
    `left=${wordAt(scan, from - 2)} ${wordAt(scan, from - 1)}`,
    `right=${wordAt(scan, to)}`,
    `right=${wordAt(scan, to)} ${wordAt(scan, to + 1)}`,
    `opener=${wordAt(scan, clause.from)}`,
    `count=${sizeOf(count)} unit=${unit}`,
    ...about.map((word) => `word=${word}`),
    ...about.map((word) => `unit=${unit} word=${word}`),
  ];
};
const AFTER = 8;

/** Of the use and time that the judges take the surest, one amount a unit, in the order told. */
export const exposedOf = (
  taken: readonly { readonly choice: ExposureChoice; readonly sure: number }[],
): Exposed[] => {
  const surest = taken.toSorted((a, b) => b.sure - a.sure).map(({ choice }) => choice);
  return surest
    .filter((each, at) => surest.findIndex((other) => other.value.unit === each.value.unit) === at)
    .toSorted((a, b) => a.at.from - b.at.from)
    .map(({ value, at }) => ({ value, at }));
};
