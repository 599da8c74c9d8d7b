import { turnSchema } from "../../bot/contracts/replay-lines.ts";
import { Replayer, type TurnLine } from "../../bot/contracts/replayer.ts";
import { createLog } from "../../bot/log.ts";
import { foundRig } from "../../bot/rig/rig.ts";
import type { RecordFields } from "../../shared/record.ts";
import { openDatabase } from "../../store/open.ts";
import { Store } from "../../store/store.ts";
import type { Talk, Turn } from "./talk.ts";

/** A record as `replay` prints it. */
export type PrintedRecord = RecordFields & { readonly id: number; readonly removed?: true };
type PrintedAnswer = {
  readonly kind: string;
  readonly records: readonly number[];
  readonly count: number | null;
  readonly cost: number | null;
  readonly verdict: "yes" | "no" | null;
};

export type Played = {
  readonly turn: Turn;
  readonly replies: readonly string[];
  /** Those that the turn made or changed. */
  readonly records: readonly PrintedRecord[];
  /** How many it made that were not known before and stand. */
  readonly made: number;
  readonly answer: PrintedAnswer | null;
  /** The records of the answer, in their latest state. */
  readonly answered: readonly PrintedRecord[];
};

const beginReplay = (talk: Talk): { readonly replayer: Replayer; readonly store: Store } => {
  const store = new Store(openDatabase(":memory:"));
  foundRig(store, { zone: talk.zone, hemisphere: talk.hemisphere });
  const deps = { store, hears: { ready: () => true } };
  return { store, replayer: new Replayer(store, deps, () => undefined, createLog("silent", [])) };
};

const played = (turn: Turn, line: TurnLine, known: Map<number, PrintedRecord>): Played => {
  const records = line.records as readonly PrintedRecord[];
  const made = records.filter(({ id, removed }) => !known.has(id) && removed !== true).length;
  for (const record of records) known.set(record.id, record);
  const answer = line.answer as PrintedAnswer | null;
  const answered = (answer?.records ?? []).flatMap((id) => known.get(id) ?? []);
  return { turn, replies: line.replies, records, made, answer, answered };
};

/** Plays one conversation through the replay contract, on a fresh store in memory; nudges fall due by its clock. */
export const play = async (talk: Talk): Promise<readonly Played[]> => {
  const { replayer, store } = beginReplay(talk);
  const known = new Map<number, PrintedRecord>();
  const lines: Played[] = [];
  for (const turn of talk.turns) {
    const { at, text } = turn;
    const said = turnSchema.parse({ at, text });
    replayer.nudgesUntil(said.at);
    lines.push(played(turn, await replayer.play(said), known));
  }
  store.close();
  return lines;
};
