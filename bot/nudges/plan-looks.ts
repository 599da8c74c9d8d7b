import { Temporal } from "temporal-polyfill";
import type { KeptRecord, RecordId } from "../../shared/history.ts";
import { type Outlook, outlookOf, outlooksOf } from "../../shared/outlook/index.ts";
import type { Action } from "../../shared/vocabulary.ts";
import type { Turn } from "../conversation/turn.ts";
import { outlookRig } from "../rig/outlook-rig.ts";
import { dayOf } from "../rig/rig.ts";
import { putOffs } from "./put-offs.ts";

/** How many other fixes of the same sort are looked at for what they teach. */
const PEERS = 100;

/** The newest fixes by the same kind of work, read once for each. */
const peersIn = ({ store }: Turn): ((record: KeptRecord) => readonly KeptRecord[]) => {
  const known = new Map<Action, readonly KeptRecord[]>();
  return ({ fields: { action } }) => {
    if (action === null) return [];
    const peers =
      known.get(action) ?? store.history.records({ kinds: ["repair"], actions: [action], limit: PEERS });
    known.set(action, peers);
    return peers;
  };
};

type Line = readonly KeptRecord[];

/** The lines that some records stand in, each once. */
const linesOf = ({ store }: Turn, ids: readonly RecordId[]): readonly Line[] => {
  const lines = new Set(ids.flatMap((id) => store.history.record(id)?.line ?? []));
  return [...lines].map((line) => store.history.records({ line }));
};

/** The outlook of a fix in its line as of now; undefined when it carries no look. */
const outlooksNow = (turn: Turn): ((record: KeptRecord, line: Line) => Outlook | undefined) => {
  const [rig, peersOf, later] = [outlookRig(turn), peersIn(turn), putOffs(turn.store)];
  return (record, line) =>
    outlookOf({
      ...rig,
      record,
      line,
      peers: peersOf(record),
      notBefore: later.get(record.id) ?? null,
    });
};

/** What still cures is not put to use, and a look before that would tell nothing. */
const dayOfLook = ({ store, rig }: Turn, { record, nextLook }: Outlook): string => {
  const ready = store.readiness.of(record);
  const from =
    ready === undefined ? "" : dayOf(Temporal.Instant.from(ready), rig).add({ days: 1 }).toString();
  const day = nextLook.day.toString();
  const [, later = day] = [from, day].toSorted();
  return later;
};

const keep = (turn: Turn, outlook: Outlook): void => {
  const why = [outlook.explain, outlook.lookFor].filter((words) => words !== "").join("\n");
  turn.store.looks.plan(outlook.record, dayOfLook(turn, outlook), why);
};

const planAll = (turn: Turn): void => {
  const records = turn.store.history.records({ kinds: ["repair"] });
  const outlooks = outlooksOf({ ...outlookRig(turn), records, notBefore: putOffs(turn.store) });
  const ahead = new Set(outlooks.map(({ record }) => record));
  for (const { id } of records) if (!ahead.has(id)) turn.store.looks.drop(id);
  for (const outlook of outlooks) keep(turn, outlook);
};

const planSome = (turn: Turn, ids: readonly RecordId[]): void => {
  const [lines, outlookNow] = [linesOf(turn, ids), outlooksNow(turn)];
  const standing = new Set(lines.flat().map(({ id }) => id));
  for (const id of ids) if (!standing.has(id)) turn.store.looks.drop(id);
  for (const line of lines)
    for (const record of line) {
      const outlook = outlookNow(record, line);
      if (outlook === undefined) turn.store.looks.drop(record.id);
      else keep(turn, outlook);
    }
};

/** Sets the next looks of some records and their lines, or of every fix after a change that moves them all. */
export const planLooks = (turn: Turn, which: readonly RecordId[] | "all"): void => {
  if (which === "all") planAll(turn);
  else planSome(turn, which);
};
