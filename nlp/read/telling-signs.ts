import { systemOf } from "../../shared/vocabulary.ts";
import { contextSigns } from "./context-signs.ts";
import { clauseAt, wordAt } from "./ground.ts";
import { isMuted } from "./muted.ts";
import { looksPast } from "./past.ts";
import type { Stretch } from "./scan.ts";
import type { Setting } from "./setting.ts";
import { sizeOf } from "./sizes.ts";
import type { Telling } from "./tellings.ts";
import { startingIn, touching } from "./windows.ts";
import { NEWNESS } from "./word-sorts.ts";
import { listed } from "./words.ts";

const PEOPLE = listed("openDeedsPeople");
const OBJECTS = new Set(["it", "them", "that", "one", "those", "both", "mine", "her"]);

/** As many records of one component as are looked at for the nearest. */
const MOST = 12;

/** Whether the rules read other work on what is named last before this place, and how far from it. */
const workElsewhere = (setting: Setting, telling: Telling): string => {
  const clause = clauseAt(setting, telling.at);
  const named = startingIn(setting.named, clause.from, telling.at + 1).at(-1);
  const component = named?.id ?? setting.topicAt[telling.at]?.component;
  if (component === undefined) return "nothing";
  const made = telling.deed === undefined ? undefined : setting.recordOf.get(telling.deed);
  const works = (setting.worksOn.get(component) ?? []).slice(0, MOST).filter((each) => each !== made);
  const before = works.findLast((each) => (each.event?.deeds[0]?.at ?? 0) < telling.at);
  const near = before ?? works[0];
  const side = near === undefined ? "none" : `${near.kind} ${before === undefined ? "after" : "before"}`;
  return `${named === undefined ? "unnamed" : named.weak ? "weak" : "named"} ${side}`;
};

/** What the rules make of this place. */
const ruledSigns = (setting: Setting, telling: Telling): string[] => {
  const { deed } = telling;
  const topic = setting.topicAt[telling.at];
  const mention = topic?.mentions.findLast((ref) => ref.from <= telling.to);
  const since =
    mention === undefined
      ? "none"
      : sizeOf((setting.index[telling.at] ?? 0) - (setting.index[mention.from] ?? 0));
  const made = deed === undefined ? undefined : setting.recordOf.get(deed);
  const bare = deed === undefined ? setting.bareIn.get(telling.clause) : undefined;
  const standing = deed === undefined ? undefined : setting.standings.get(deed);
  const place = standing?.place ?? "none";
  const before = startingIn(
    setting.scan.verdicts,
    (standing?.after?.at ?? telling.at - 12) + 1,
    telling.at,
  ).at(-1)?.value.outcome;
  const record = (made ?? bare)?.kind ?? "none";
  const elsewhere = workElsewhere(setting, telling);
  const verdict = startingIn(setting.scan.verdicts, telling.from, telling.to).length > 0;
  return [
    `elsewhere=${elsewhere}`,
    `elsewhere=${elsewhere} record=${record}`,
    `elsewhere=${elsewhere} verdict=${String(verdict)} known=${String(deed !== undefined)}`,
    `record=${record}`,
    `record=${record} note=${sizeOf(setting.clauses.length)}`,
    `record=${record} place=${place}`,
    `place=${place} verdict-before=${before ?? "none"}`,
    `topic=${topic === undefined ? "none" : topic.ref.weak ? "weak" : "strong"}`,
    `since=${since}`,
    `record=${record} since=${since}`,
    `muted=${String(isMuted(setting.muted, telling.at))}`,
    `dead=${String(setting.fixed.dead[telling.at] === 1)}`,
    `record=${record} muted=${String(isMuted(setting.muted, telling.at))}`,
    ...(topic === undefined ? [] : [`about=${topic.component}`, `about=${systemOf(topic.component)}`]),
  ];
};

const says = (setting: Setting, index: number): string => {
  const clause = setting.clauses[index];
  if (clause === undefined) return "none";
  if (startingIn(setting.deeds, clause.from - 6, clause.to + 6).some((deed) => deed.clause === index))
    return "deed";
  if (startingIn(setting.scan.verdicts, clause.from, clause.to).length > 0) return "verdict";
  return startingIn(setting.scan.faults, clause.from, clause.to).length > 0 ? "fault" : "no";
};

/** In notes of so few clauses, signs may mean something else than in long ones. */
const FEW_CLAUSES = 3;
const BEFORE = 7;
const AFTER = 11;
/** As far ahead as work may still answer trouble told here. */
const AHEAD = 30;

/** The signs, as names, that tell what is told at a place: work, a look, trouble, an intention or nothing. */
export const tellingSigns = (setting: Setting, telling: Telling): string[] => {
  const { scan } = setting;
  const { at, deed, clause: index } = telling;
  const clause = clauseAt(setting, at);
  const from = Math.max(clause.from, Math.min(telling.from, at - BEFORE));
  const to = Math.min(clause.to, Math.max(telling.to, at + AFTER));
  const words = scan.tokens.slice(from, to).map((token) => token.norm);
  const mine = <T extends Stretch>(refs: readonly T[]): readonly T[] => startingIn(refs, from, to);
  const components = mine(scan.components);
  const verdicts = mine(scan.verdicts);
  const faults = mine(scan.faults);
  const groups = [...new Set(mine(scan.materials).map((ref) => ref.group ?? "other"))];
  const times = mine(scan.times);
  const cues = [...new Set(mine(scan.cues).map((cue) => cue.value))];
  const person = words.slice(0, Math.max(1, at - from)).findLast((word) => PEOPLE.has(word)) ?? "none";
  const rule = deed === undefined ? "none" : `${deed.sense}:${deed.status}`;
  const past = words.findIndex(looksPast);
  const outcome = verdicts.at(-1)?.value.outcome ?? "none";
  const strength = Math.max(0, ...faults.map((fault) => fault.value));
  const shape = [
    components.length === 0 ? "no-thing" : components.every((ref) => ref.weak) ? "weak-thing" : "thing",
    groups.length > 0 ? "material" : "no-material",
    words.some((word) => NEWNESS.has(word)) ? "new" : "old",
  ].join(",");
  const time =
    times.length === 0 ? "none" : times.some((ref) => ref.time.direction === "future") ? "ahead" : "past";
  const on = touching(scan.verdicts, at, at).some((ref) => ref.from === at)
    ? "verdict"
    : touching(scan.faults, at, at).some((ref) => ref.from === at)
      ? "fault"
      : looksPast(wordAt(scan, at))
        ? "past"
        : wordAt(scan, at).endsWith("ing")
          ? "ing"
          : "none";
  const also = touching(setting.deeds, clause.from, clause.to).some(
    (each) => each !== deed && each.clause === index && each.status !== "talk",
  );
  const ahead = sizeOf(
    startingIn(setting.deeds, to, to + AHEAD).filter((each) => each.status === "done" && each.at >= to)
      .length,
  );
  const note = sizeOf(setting.clauses.length);
  const lexical = [
    `family=${deed?.source.split(/[ ~]/)[0] ?? "none"}`,
    `left=${wordAt(scan, at - 1)}`,
    `right=${wordAt(scan, at + 1)}`,
    `opener=${wordAt(scan, clause.from)}`,
    ...ruledSigns(setting, telling),
  ];
  const plain = [
    `on=${on}`,
    `on=${on} person=${person}`,
    `on=${on} shape=${shape}`,
    `on=${on} time=${time}`,
    `also=${String(also)}`,
    `place=${sizeOf(at - clause.from)}`,
    `person=${person}`,
    `past=${past < 0 ? "no" : sizeOf(past)}`,
    `shape=${shape}`,
    `time=${time}`,
    `object=${String(words.some((word) => OBJECTS.has(word)))}`,
    `fault=${String(strength)}`,
    `outcome=${outcome}`,
    `fault=${String(strength)} outcome=${outcome}`,
    `money=${String(mine(scan.amounts).some((amount) => amount.what === "money"))}`,
    `ahead=${ahead} on=${on}`,
    `ahead=${ahead} fault=${String(strength)}`,
    `ahead=${ahead} outcome=${outcome}`,
    `note=${note}`,
    `note=${note} on=${on}`,
    `note=${note} shape=${shape}`,
    `note=${note} fault=${String(strength)}`,
    `note=${note} outcome=${outcome}`,
    `length=${sizeOf(clause.to - clause.from)}`,
    `hard=${String(clause.hard)}`,
    `subordinate=${String(clause.subordinate)}`,
    `around=${says(setting, index - 1)}>${says(setting, index + 1)}`,
    `after=${says(setting, index + 1)}`,
    `action=${deed?.action ?? "none"}`,
    `shape=${shape} person=${person}`,
    `shape=${shape} past=${past < 0 ? "no" : "yes"}`,
    `shape=${shape} time=${time}`,
    ...cues.map((cue) => `cue=${cue}`),
  ];
  const side = deed === undefined ? "open" : "known";
  const signs = [
    side,
    `rule=${rule}`,
    `verb=${wordAt(scan, at)}`,
    ...lexical,
    ...plain,
    ...groups.map((group) => `group=${group}`),
    ...words.map((word) => `word=${word}`),
    ...words.slice(1).map((word, i) => `pair=${words[i] ?? ""} ${word}`),
    ...cues.map((cue) => `rule=${rule} cue=${cue}`),
    `start=${setting.sorts.slice(from, Math.min(to, from + 3)).join("")}`,
    `next=${setting.sorts.slice(at, Math.min(to, at + 4)).join("")}`,
    `rule=${rule} opener=${wordAt(scan, clause.from)}`,
    `rule=${rule} person=${person}`,
    `rule=${rule} time=${time}`,
    `rule=${rule} shape=${shape}`,
    ...contextSigns(setting, telling, { from, to }, rule),
  ];
  return setting.clauses.length <= FEW_CLAUSES ? [...signs, ...signs.map((sign) => `few ${sign}`)] : signs;
};
