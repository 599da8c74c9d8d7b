import { systemOf } from "../../shared/vocabulary.ts";
import { aftermathSigns } from "./aftermath-signs.ts";
import type { Build } from "./build.ts";
import { type Deed, IMPLIED } from "./deed.ts";
import { tokensOf, wordAt } from "./ground.ts";
import type { Made } from "./made.ts";
import type { Stretch } from "./scan.ts";
import type { Told } from "./told.ts";
import { startingIn } from "./windows.ts";
import { NEWNESS } from "./word-sorts.ts";

const size = (count: number): string =>
  count <= 2 ? String(count) : count <= 5 ? "few" : count <= 12 ? "some" : "many";

/** The signs, as names, that tell what was done: the rules' own action, the words around the deed and what it was done to and with. */
export const actionSigns = (
  told: Told,
  deed: Deed,
  kind: "repair" | "todo" | "check",
  ruled: string,
  { scan, clauses, index }: Build,
): string[] => {
  const clause = clauses[index[deed.at] ?? 0] ?? { from: deed.from, to: deed.to };
  const from = Math.max(clause.from, deed.at - 12);
  const to = Math.max(Math.min(clause.to, deed.at + 22), deed.to);
  const words = scan.tokens.slice(from, to).map((token) => token.norm);
  const groups = [
    ...new Set(
      startingIn(told.materials, Math.min(deed.from, deed.at) - 2, to).map((ref) => ref.group ?? "other"),
    ),
  ];
  const { component } = told.topic;
  const verb = wordAt(scan, deed.at);
  const fault = told.faults.some((each) => each.from < deed.from);
  const others = told.deeds.filter((each) => each !== deed && each.status === "done" && each.action !== null);
  return [
    `kind=${kind}`,
    `ruled=${ruled}`,
    `ruled=${ruled} kind=${kind}`,
    `ruled=${ruled} component=${component}`,
    `ruled=${ruled} system=${systemOf(component)}`,
    `ruled=${ruled} sense=${deed.sense}`,
    `ruled=${ruled} known=${String(deed.source !== IMPLIED)}`,
    `own=${deed.action ?? "none"}`,
    `own=${deed.action ?? "none"} sense=${deed.sense}`,
    `verb=${verb}`,
    `verb=${verb} component=${component}`,
    `verb=${verb} next=${wordAt(scan, deed.at + 1)}`,
    `component=${component}`,
    `component=${component} kind=${kind}`,
    `fault=${String(fault)}`,
    `new=${String(words.some((word) => NEWNESS.has(word)))}`,
    `groups=${groups.join("+")}`,
    `materials=${size(groups.length)} new=${String(words.some((word) => NEWNESS.has(word)))} sense=${deed.sense}`,
    ...groups.flatMap((group) => [
      `group=${group}`,
      `group=${group} verb=${verb}`,
      `group=${group} ruled=${ruled}`,
    ]),
    ...others.map((each) => `other=${each.action ?? "none"}`),
    ...words.map((word) => `word=${word}`),
    ...words.slice(1).map((word, at) => `pair=${words[at] ?? ""} ${word}`),
  ];
};

const LONGEST = 45;
/** Words up to the deed that are looked at. */
const AHEAD = 14;
const BEYOND = 8;

/** The signs, as names, that tell how a piece of work or a look came out. */
export const outcomeSigns = (made: Made, next: Made | undefined, build: Build): string[] => {
  const { scan } = build;
  const deed = made.event?.deeds.findLast((each) => each.sense !== "prep") ?? made.event?.deeds.at(-1);
  const start = deed?.to ?? made.span.from;
  const end = Math.min(made.span.to, start + LONGEST);
  const inTail = <T extends Stretch>(refs: readonly T[]): readonly T[] => startingIn(refs, start, end);
  const names = tokensOf([...inTail(scan.components), ...inTail(scan.times)]);
  const tail = scan.tokens
    .slice(start, end)
    .filter((token, at) => token.kind !== "mark" && !names.has(start + at))
    .map((token) => token.norm);
  const said = inTail(made.told.verdicts);
  const early = startingIn(made.told.verdicts, made.span.from, start);
  const led = startingIn(scan.verdicts, made.span.from - AHEAD, made.span.from).at(-1);
  const faults = inTail(made.told.faults);
  const ruled = made.judged?.outcome ?? "untested";
  const rule = made.judged?.rule.split(/[: ]/)[0] ?? "none";
  const redone =
    next !== undefined && next.told.topic.component === made.told.topic.component ? next.kind : "no";
  const last = said.at(-1);
  const system = systemOf(made.told.topic.component);
  const ahead = scan.tokens
    .slice(Math.max(0, start - AHEAD), start)
    .filter((token) => token.kind !== "mark")
    .map((token) => token.norm);
  const opened = startingIn(build.clauses, start, end).map(
    ({ from }) => `${wordAt(scan, from)} ${wordAt(scan, from + 1)}`,
  );
  const own = [
    `ruled=${ruled}`,
    `rule=${rule}`,
    `rule=${ruled} ${rule}`,
    `first=${said[0]?.value.outcome ?? "none"}`,
    `last=${last?.value.outcome ?? "none"}`,
    `said=${said
      .map((each) => each.value.outcome)
      .slice(0, 3)
      .join(">")}`,
    `early=${early.at(-1)?.value.outcome ?? "none"}`,
    `faults=${size(faults.length)}`,
    `redone=${redone}`,
    `redone=${redone} ruled=${ruled}`,
    `redone=${redone} rule=${rule} action=${made.action ?? "none"}`,
    `dated=${made.dated?.rule ?? "none"}`,
    `dated=${made.dated?.rule ?? "none"} ruled=${ruled}`,
    `today=${String(made.dated?.edtf === build.today)}`,
    `today=${String(made.dated?.edtf === build.today)} rule=${rule}`,
    `exposed=${String(made.exposure.length > 0)} ruled=${ruled}`,
    `exposed=${String(made.exposure.length > 0)} rule=${rule} redone=${redone}`,
    `tail=${size(tail.length)} ruled=${ruled}`,
    `action=${made.action ?? "none"}`,
    `action=${made.action ?? "none"} ruled=${ruled}`,
    `action=${made.action ?? "none"} rule=${rule}`,
    `system=${systemOf(made.told.topic.component)} rule=${rule}`,
    `silent=${String(said.length === 0 && faults.length === 0)} redone=${redone}`,
  ];
  return [
    ...own,
    ...own.map((sign) => `${made.kind} ${sign}`),
    ...said.map((each) => `verdict=${each.source}`),
    ...said.map((each) => `verdict=${each.source} ruled=${ruled}`),
    ...tail.map((word) => `word=${word}`),
    ...tail.slice(1).map((word, at) => `pair=${tail[at] ?? ""} ${word}`),
    ...tail.slice(-3).map((word) => `end=${word}`),
    ...tail.map((word) => `system=${system} word=${word}`),
    ...ahead.map((word) => `ahead=${word}`),
    ...ahead.slice(1).map((word, at) => `ahead=${ahead[at] ?? ""} ${word}`),
    ...scan.tokens.slice(end, end + BEYOND).map(({ norm }) => `beyond=${norm}`),
    ...tail.map((word) => `action=${made.action ?? "none"} word=${word}`),
    ...tail.slice(2).map((word, at) => `three=${tail[at] ?? ""} ${tail[at + 1] ?? ""} ${word}`),
    `trouble=${size(startingIn(made.told.faults, made.span.from, start).length)} ruled=${ruled}`,
    `trouble=${size(startingIn(made.told.faults, made.span.from, start).length)} first=${tail.slice(0, 2).join(" ")}`,
    ...opened.map((words) => `opens=${words}`),
    `led=${led?.value.outcome ?? "none"} ruled=${ruled} ${made.kind}`,
    `led=${led?.value.outcome ?? "none"} rule=${rule} known=${String(deed !== undefined)}`,
    ...opened.slice(0, 1).map((words) => `opens first=${words}`),
    `opened=${size(opened.length)} redone=${redone} ruled=${ruled}`,
    ...aftermathSigns(made, next, { from: start, to: end }, redone, build),
  ];
};
