import type { KeptRecord } from "../history.ts";
import type { Answer } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { attemptAmong } from "./attempt-asked.ts";
import { kinOf } from "./families.ts";
import { actionFit, actionsLike, doerFits, sharedCount, stuffFits, wordFit } from "./fit.ts";
import { type Ground, namesNothing, poolInWords, poolOf, recordsInWords } from "./pool.ts";
import type { Query, Topic } from "./query.ts";
import { tellingStems } from "./words.ts";

type Last = Extract<Query, { ask: "last" }>;

const looksOnly = (topic: Topic): boolean =>
  topic.actions.length > 0 && topic.actions.every((action) => action === "inspect" || action === "test");

/** Work; looks only when a look was asked about. */
const isAnswer = (topic: Topic, record: KeptRecord): boolean => {
  const { kind } = record.fields;
  return looksOnly(topic)
    ? kind === "check" || (kind === "repair" && record.verdicts.length > 0)
    : kind === "repair";
};

/** All of a thing's work is looked at where the first is asked for. */
const EVERY = 2000;
const SCORED = 40;

/** By what was asked: the action before its kin, then the words; among equals the order of the pool stays. */
const bestFirst = (ground: Ground, query: Last, pool: readonly KeptRecord[]): readonly KeptRecord[] => {
  const ordered = query.order === "oldest" ? [...pool].reverse() : pool;
  const scored = ordered.slice(0, SCORED).map((record) => ({
    record,
    points: scoreOf(ground, query, record),
  }));
  return scored.sort((a, b) => b.points - a.points).map(({ record }) => record);
};

const scoreOf = (ground: Ground, { topic, focus, order }: Last, record: KeptRecord): number => {
  const note = topic.words.length === 0 ? "" : (ground.history.note(record.noteId)?.text ?? "");
  const wanted =
    (focus === "materials" && record.fields.materials.length > 0) ||
    (focus === "cost" && record.fields.cost !== null);
  const first = order === "oldest" && !namesNothing(topic);
  const words = first || (focus === "what" && topic.actions.length === 0) ? 0 : wordFit(topic, record, note);
  return (looksOnly(topic) ? 0 : 4 * actionFit(topic, record)) + Math.min(words, 5) + (wanted ? 3 : 0);
};

/** Nothing to look by but words that may stand in a note. */
const onlyWords = (topic: Topic): boolean =>
  topic.words.length > 0 && namesNothing(topic) && topic.materials.length === 0;

/** Work into which something of that name went: "when did I put bushes in". */
const madeWith = (ground: Ground, topic: Topic): readonly KeptRecord[] =>
  recordsInWords(ground, topic, SCORED).filter(
    ({ fields }) => sharedCount(topic.words, tellingStems(fields.materials.join(" "))) > 0,
  );

/** The work that fits, the best first. */
const fitting = (ground: Ground, query: Last): readonly KeptRecord[] => {
  const { topic } = query;
  const fits = (record: KeptRecord): boolean =>
    isAnswer(topic, record) && (looksOnly(topic) || actionFit(topic, record) > 0);
  const named = onlyWords(topic) ? [] : poolOf(ground, topic, howFar(query), fits);
  const told = named.length > 0 ? named : poolInWords(ground, topic).filter(fits);
  const pool = told.length > 0 ? told : onlyWords(topic) ? madeWith(ground, topic).filter(fits) : [];
  return bestFirst(ground, query, preferStuff(topic, pool));
};

const kinTopic = (topic: Topic): Topic => ({
  ...topic,
  named: topic.named.flatMap(({ component, sure }) =>
    kinOf(component).map((kin) => ({ component: kin, sure })),
  ),
  systems: [],
});

/** "When did I last make sure that it works": no work is named, and a look at it is what was done last. */
const looksAtIt = (ground: Ground, query: Last): readonly KeptRecord[] => {
  const { topic, focus } = query;
  const namesWork = topic.actions.some((action) => action !== "repair");
  return namesWork || namesNothing(topic) || focus === "materials" || focus === "cost"
    ? []
    : fitting(ground, { ...query, topic: { ...topic, actions: ["inspect", "test"] } });
};

type Closest = Pick<Answer, "because" | "records">;

/** Where nothing fits: at another time, the same work on kin of the thing, other work on the thing itself. */
const closest = (ground: Ground, query: Last): Closest => {
  const { topic, period } = query;
  const acts = topic.actions.length > 0 && !namesNothing(topic);
  const found = (because: Answer["because"], records: readonly KeptRecord[]): Closest => ({
    because,
    records,
  });
  const tries: readonly (() => Closest)[] = [
    () => found("found", looksAtIt(ground, query)),
    () => found("another-time", period === null ? [] : fitting(ground, { ...query, period: null })),
    () =>
      found(
        "kin",
        acts
          ? fitting(ground, { ...query, topic: kinTopic(topic) }).filter(
              (record) => actionFit(topic, record) === 2,
            )
          : [],
      ),
    () =>
      found(
        "other-work",
        acts && !looksOnly(topic) ? fitting(ground, { ...query, topic: { ...topic, actions: [] } }) : [],
      ),
  ];
  return tries.map((each) => each()).find(({ records }) => records.length > 0) ?? found("found", []);
};

/** The newest (or first) work that fits, with what else fits behind it; the closest, told as such, where none does. */
export const answerLast = (ground: Ground, query: Last): Answer => {
  const ordered = fitting(ground, query);
  const { because, records } =
    ordered.length > 0 ? { because: "found" as const, records: ordered } : closest(ground, query);
  const best = query.focus === "cure" ? cureFirst(ground, records) : attemptFirst(ground, query, records);
  const [first] = best;
  return first === undefined
    ? nothingFits(ground, query)
    : answerTo(query, { records: best.slice(0, 5), because, ...figuresOf(query, first) });
};

/** The try that is asked about, before the others. */
const attemptFirst = (
  { hemisphere }: Ground,
  { attempt }: Last,
  found: readonly KeptRecord[],
): readonly KeptRecord[] => {
  const [nearest] = found;
  const same = found.filter(({ fields }) => fields.component === nearest?.fields.component);
  const meant = attempt === undefined ? undefined : attemptAmong(same, attempt, hemisphere);
  return meant === undefined ? found : [meant, ...found.filter(({ id }) => id !== meant.id)];
};

/** What the record that is told of first says to what is wanted of it. */
const figuresOf = ({ focus }: Last, { fields: { cost, outcome } }: KeptRecord): Partial<Answer> => {
  if (focus === "cost") return { cost };
  if (focus !== "state" || outcome === null || outcome === "untested") return {};
  return { verdict: outcome === "failed" ? "no" : "yes" };
};

/** What made an end of it: the newest of the attempts on that trouble which has not let go. */
const cureFirst = ({ history }: Ground, best: readonly KeptRecord[]): readonly KeptRecord[] => {
  const [first] = best;
  const line =
    first === undefined ? [] : history.records({ line: first.line, kinds: ["repair"], limit: SCORED });
  const cure = line.find(({ fields }) => fields.outcome !== "failed");
  return cure === undefined ? best : [cure, ...best.filter(({ id }) => id !== cure.id)];
};

const howFar = ({ topic, period, order }: Last) => ({
  period,
  actions: looksOnly(topic) ? undefined : actionsLike(topic),
  ...(looksOnly(topic) ? {} : { kinds: ["repair"] as const }),
  ...(order === "oldest" ? { limit: EVERY } : {}),
});

const preferStuff = (topic: Topic, pool: readonly KeptRecord[]): readonly KeptRecord[] => {
  const exact = pool.filter((record) => stuffFits(topic, record) && doerFits(topic, record));
  return exact.length > 0 ? exact : pool;
};
