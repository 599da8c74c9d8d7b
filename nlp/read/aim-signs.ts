import type { ComponentRef } from "../lexicon/components.ts";
import { CLAIMS } from "../lexicon/lexicon.ts";
import { singular } from "../lexicon/tokens.ts";
import type { Described } from "./described.ts";
import { clauseAt, isPartOf, leftOf, wordAt } from "./ground.ts";
import { isMuted } from "./muted.ts";
import { opensClause, roleOf } from "./roles.ts";
import type { Setting } from "./setting.ts";
import { sizeOf } from "./sizes.ts";
import type { Telling } from "./tellings.ts";
import { startingIn } from "./windows.ts";
import { DETERMINERS } from "./words.ts";

const MOST = 9;
const AHEAD = 14;
const BACK = 150;

/** The mentions that a telling may be about: the last ones before it and those right behind it. */
export const aimsOf = (setting: Setting, telling: Telling): ComponentRef[] => {
  const clause = clauseAt(setting, telling.at);
  const live = startingIn(setting.named, telling.at - BACK, Math.max(clause.to, telling.at + AHEAD)).filter(
    (ref) => setting.fixed.dead[ref.from] !== 1,
  );
  const before = live.filter((ref) => ref.from <= telling.at).slice(-MOST);
  const after = live.filter((ref) => ref.from > telling.at).slice(0, 4);
  return [...before, ...after];
};

const LEVELS = [
  [0.02, "none"],
  [0.06, "trace"],
  [0.15, "some"],
  [0.35, "fair"],
  [0.65, "good"],
] as const;
const MORE = [
  [0.15, "little"],
  [0.4, "some"],
] as const;

const levelOf = (sure: number, levels: readonly (readonly [below: number, name: string])[], top: string) =>
  levels.find(([below]) => sure < below)?.[1] ?? top;

/** How likely the words around speak of it, and whether of anything else more. */
const spokenOf = (described: Described, { id }: ComponentRef): string[] => {
  const mine = described.get(id) ?? 0;
  const most = Math.max(0, ...described.values());
  const level = levelOf(mine, LEVELS, "sure");
  const other = most > mine ? levelOf(most, MORE, "much") : "first";
  return [`spoken=${level}`, `spoken=${level} other=${other}`];
};

/** The signs, as names, that tell whether a telling is about a mention. */
export const aimSigns = (
  setting: Setting,
  telling: Telling,
  ref: ComponentRef,
  aims: readonly ComponentRef[],
  described: Described,
): string[] => {
  const { scan, index } = setting;
  const { at, deed } = telling;
  const clause = clauseAt(setting, at);
  const clauses = (index[at] ?? 0) - (index[ref.from] ?? 0);
  const here = clauses === 0;
  const ahead = ref.from > at;
  const side = ahead ? "after" : "before";
  const nearer = ahead
    ? aims.filter((each) => each.from > at && each.from < ref.from).length
    : aims.filter((each) => each.from <= at && each.from > ref.from).length;
  const before = aims[aims.indexOf(ref) - 1];
  const next = aims[aims.indexOf(ref) + 1];
  const role = roleOf(setting, ref, before);
  const left = leftOf(setting, ref.from, clauseAt(setting, ref.from).from);
  const preposition = wordAt(scan, left);
  const determiner = wordAt(scan, ref.from - 1);
  const article = DETERMINERS.has(determiner) ? determiner : "-";
  const known = ref.weak ? "weak" : ref.to - ref.from > 1 ? "long" : "short";
  const strength = ref.described !== undefined ? "described" : ref.guessed === undefined ? known : "guess";
  const spoken = spokenOf(described, ref);
  const guess = ref.guessed === undefined ? [] : [`guess=${sizeOf(Math.round(ref.guessed * 6))}`];
  const topic = setting.topicAt[at];
  const made = deed === undefined ? undefined : setting.recordOf.get(deed);
  const ruled =
    made?.told.topic.component === ref.id ? "record" : topic?.component === ref.id ? "topic" : "no";
  const from = Math.min(at, ref.to);
  const to = Math.max(at, ref.from);
  const deeds = startingIn(setting.deeds, from, to).filter(
    (each) => each !== deed && each.at > from && each.at < to && each.status !== "talk",
  ).length;
  const others = aims.filter(
    (each) => each !== ref && each.id !== ref.id && each.from >= from && each.to <= to,
  );
  const verdict = startingIn(scan.verdicts, from, to).length > 0;
  const hard = setting.clauses
    .slice(
      Math.min(index[at] ?? 0, index[ref.from] ?? 0) + 1,
      Math.max(index[at] ?? 0, index[ref.from] ?? 0) + 1,
    )
    .filter((each) => each.hard).length;
  const opens = opensClause(setting, ref);
  const inClause = aims.filter((each) => each.from >= clause.from && each.from < clause.to);
  const partHere = inClause.some((each) => each !== ref && isPartOf(ref.id, each.words));
  const partThere = aims.some((each) => each.id !== ref.id && isPartOf(each.id, ref.words));
  const claims = CLAIMS.get(ref.id);
  const claimed = startingIn(scan.materials, clause.from, clause.to).some(
    (material) => claims?.has(singular(material.name.split(" ").at(-1) ?? "")) === true,
  );
  const asMaterial = startingIn(scan.materials, ref.from - 4, ref.to).some(
    (material) => material.from <= ref.from && ref.to <= material.to,
  );
  const repeated = aims.filter((each) => each.id === ref.id).length;
  const joint =
    next !== undefined && next.from - ref.to <= 4 && index[next.from] === index[ref.from]
      ? wordAt(scan, ref.to)
      : "none";
  const pronoun = ["it", "them", "that", "those", "they"].find((word) =>
    scan.tokens.slice(clause.from, clause.to).some((token) => token.norm === word),
  );
  const verb = wordAt(scan, at);
  const action = made?.action ?? deed?.action ?? "none";
  const gap = ahead ? sizeOf(ref.from - at) : sizeOf(at - ref.to);
  const where = `${side} ${sizeOf(Math.abs(clauses))}`;
  const base = [
    `where=${where}`,
    `gap=${side} ${gap}`,
    `nearer=${side} ${String(nearer)}`,
    `role=${role}`,
    `preposition=${preposition}`,
    `article=${article}`,
    `strength=${strength}`,
    `ruled=${ruled}`,
    `deeds=${sizeOf(deeds)}`,
    `others=${sizeOf(others.length)}`,
    `verdict=${String(verdict)}`,
    `hard=${sizeOf(hard)}`,
    `opens=${String(opens)}`,
    `partHere=${String(partHere)}`,
    `partThere=${String(partThere)}`,
    `claimed=${String(claimed)}`,
    `asMaterial=${String(asMaterial)}`,
    `repeated=${sizeOf(repeated)}`,
    `joint=${joint}`,
    `muted=${String(isMuted(setting.muted, ref.from))}`,
    `id=${ref.id}`,
  ];
  return [
    ...base,
    ...spoken,
    ...spoken.map((sign) => `${sign} strength=${strength}`),
    ...spoken.map((sign) => `${sign} role=${role}`),
    ...spoken.map((sign) => `${sign} where=${where}`),
    ...spoken.map((sign) => `${sign} ruled=${ruled}`),
    ...guess,
    ...guess.map((sign) => `${sign} role=${role}`),
    ...guess.map((sign) => `${sign} others=${sizeOf(aims.length)}`),
    `role=${role} where=${where}`,
    `role=${role} here=${String(here)} strength=${strength}`,
    `strength=${strength} nearer=${side} ${String(nearer)}`,
    `strength=${strength} where=${where}`,
    `ruled=${ruled} where=${where}`,
    `ruled=${ruled} strength=${strength}`,
    `ruled=${ruled} role=${role}`,
    `ruled=${ruled} nearer=${side} ${String(nearer)}`,
    `opens=${String(opens)} strength=${strength} where=${where}`,
    `pronoun=${pronoun ?? "none"} where=${where}`,
    `pronoun=${pronoun ?? "none"} role=${role} here=${String(here)}`,
    `deeds=${sizeOf(deeds)} where=${where}`,
    `others=${sizeOf(others.length)} strength=${strength}`,
    `hard=${sizeOf(hard)} deeds=${sizeOf(deeds)}`,
    `preposition=${preposition} where=${where}`,
    `preposition=${preposition} asMaterial=${String(asMaterial)}`,
    `article=${article} strength=${strength} here=${String(here)}`,
    `partHere=${String(partHere)} ruled=${ruled}`,
    `partThere=${String(partThere)} strength=${strength}`,
    `id=${ref.id} action=${action}`,
    `id=${ref.id} verb=${verb}`,
    `id=${ref.id} role=${role}`,
    `id=${ref.id} strength=${strength}`,
    `known=${String(deed !== undefined)} where=${where}`,
    `sense=${deed?.sense ?? "none"} where=${where}`,
    `sense=${deed?.sense ?? "none"} role=${role}`,
    `joint=${joint} strength=${strength}`,
  ];
};
