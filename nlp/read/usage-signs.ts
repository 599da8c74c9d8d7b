import { clauseAt, type Ground, wordAt } from "./ground.ts";
import { sizeOf } from "./sizes.ts";
import type { UseChoice } from "./use-choice.ts";
import { startingIn } from "./windows.ts";

const BACK = 9;
const AHEAD = 7;
/** As far on both sides, in words, as things, work and verdicts are looked for. */
const NEAR = 14;
/** Counts from here on are of one size. */
const MANY = 1000;
const SOME = 100;

const sizeOfUse = (count: number): string =>
  count >= MANY ? "thousands" : count >= SOME ? "hundreds" : sizeOf(Math.round(count));

/** The signs, as names, that tell whether an amount is of the use of the rig itself. */
export const usageSigns = (ground: Ground, choice: UseChoice, choices: readonly UseChoice[]): string[] => {
  const { scan, clauses, index, deeds } = ground;
  const { from, to, what, ruled } = choice;
  const clause = clauseAt(ground, from);
  const around = <T extends { readonly from: number }>(refs: readonly T[]): readonly T[] =>
    startingIn(refs, from - NEAR, to + NEAR);
  const inClause = <T extends { readonly from: number }>(refs: readonly T[]): readonly T[] =>
    startingIn(refs, clause.from, clause.to);
  const things = inClause(scan.components).filter((ref) => !ref.weak).length > 0 ? "thing" : "none";
  const nearThings = sizeOf(around(scan.components).filter((ref) => !ref.weak).length);
  const done = around(deeds).filter((deed) => deed.status === "done").length > 0 ? "work" : "none";
  const doneBefore = startingIn(deeds, 0, from).some((deed) => deed.status === "done")
    ? "after-work"
    : "first";
  const verdict = inClause(scan.verdicts).at(-1)?.value.outcome ?? "none";
  const verdictBefore = startingIn(scan.verdicts, from - NEAR, from).at(-1)?.value.outcome ?? "none";
  const verdictAfter = startingIn(scan.verdicts, to, to + NEAR)[0]?.value.outcome ?? "none";
  const time = inClause(scan.times).some((ref) => ref.from < from || ref.from >= to)
    ? inClause(scan.times).some(({ time }) => time.direction === "future")
      ? "ahead"
      : "timed"
    : "none";
  const others = choices.filter(
    (other) => other !== choice && Math.abs(other.from - from) <= NEAR && other.what !== what,
  );
  const beside = others.some(({ ruled: isRuled }) => isRuled)
    ? "ruled"
    : others.length > 0
      ? "other"
      : "alone";
  const place = sizeOf(index[from] ?? 0);
  const note = sizeOf(clauses.length);
  const before = scan.tokens.slice(Math.max(0, from - BACK), from).map(({ norm }) => norm);
  const after = scan.tokens.slice(to, to + AHEAD).map(({ norm }) => norm);
  const size = sizeOfUse(choice.value);
  const context = `${things} ${done} ${verdict}`;
  return [
    `unit=${what}`,
    `unit=${what} size=${size}`,
    `ruled=${String(ruled)}`,
    `unit=${what} ruled=${String(ruled)}`,
    `ruled=${String(ruled)} context=${context}`,
    `ruled=${String(ruled)} beside=${beside}`,
    `ruled=${String(ruled)} place=${place}`,
    `unit=${what} context=${context}`,
    `unit=${what} time=${time}`,
    `unit=${what} time=${time} context=${context}`,
    `unit=${what} beside=${beside}`,
    `unit=${what} place=${place}`,
    `unit=${what} ${doneBefore}`,
    `unit=${what} things=${nearThings}`,
    `unit=${what} note=${note}`,
    `note=${note} place=${place}`,
    `verdict=${verdict}`,
    `verdict-before=${verdictBefore}`,
    `verdict-after=${verdictAfter}`,
    `opener=${wordAt(scan, clause.from)}`,
    `unit=${what} left=${before.slice(-1).join(" ")}`,
    `left=${before.slice(-2).join(" ")}`,
    `unit=${what} right=${after.slice(0, 1).join(" ")}`,
    `right=${after.slice(0, 2).join(" ")}`,
    ...before.map((word) => `before=${word}`),
    ...before.slice(-4).map((word) => `close-before=${word}`),
    ...before.map((word) => `unit=${what} before=${word}`),
    ...after.map((word) => `after=${word}`),
    ...after.slice(0, 3).map((word) => `close-after=${word}`),
    ...after.map((word) => `unit=${what} after=${word}`),
  ];
};
