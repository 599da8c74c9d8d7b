import { read } from "../../nlp/read/index.ts";
import { understand } from "../../nlp/understand/understand.ts";
import type { KeptRecord, KeptUsage, RecordId } from "../../shared/history.ts";
import { amend } from "../../shared/memory/amend.ts";
import { answer } from "../../shared/memory/answer.ts";
import type { Answer } from "../../shared/memory/answer-data.ts";
import type { Correction } from "../../shared/memory/correction.ts";
import type { Intent } from "../../shared/memory/intent.ts";
import { link } from "../../shared/memory/link.ts";
import { poolOf } from "../../shared/memory/pool.ts";
import { EMPTY_SCENE, type Scene, type Showing } from "../../shared/memory/scene.ts";
import { isOpen } from "../../shared/memory/told.ts";
import { workAgain } from "../../shared/memory/work-again.ts";
import type { Moment, Reading } from "../../shared/reading.ts";
import { Keeper } from "../shared/memory/keeper.ts";

export type TurnResult = {
  readonly intent: Intent;
  /** Records that the turn made or changed, in their latest state. */
  readonly records: readonly KeptRecord[];
  readonly made: number;
  readonly answer: Answer | null;
  readonly problem: string | null;
};

type Touched = {
  readonly ids: readonly RecordId[];
  readonly made: number;
  readonly usage: readonly KeptUsage[];
};
type Effect = Touched & { readonly answer?: Answer; readonly problem?: string };

const NONE: Touched = { ids: [], made: 0, usage: [] };

/** Plays one owner's conversation through understanding, reading, linking, amending and answering, on a history in memory. */
export class Conversation {
  readonly keeper: Keeper;
  private readonly zone: string;
  private readonly hemisphere: Moment["hemisphere"];
  private scene: Scene = EMPTY_SCENE;

  constructor(zone: string, hemisphere: Moment["hemisphere"]) {
    this.zone = zone;
    this.hemisphere = hemisphere;
    this.keeper = new Keeper(hemisphere);
  }

  turn(at: string, text: string): TurnResult {
    const moment: Moment = { said: at, zone: this.zone, hemisphere: this.hemisphere };
    const intent = understand(text, moment, this.scene);
    const effect = this.act(intent, text, moment);
    const rest = intent.rest === null ? NONE : this.tell(intent.rest, moment);
    const ids = [...new Set([...effect.ids, ...rest.ids])];
    const records = ids.flatMap((id) => this.keeper.history.record(id) ?? []);
    this.show(at, intent, records, [...effect.usage, ...rest.usage]);
    return {
      intent,
      records,
      made: effect.made + rest.made,
      answer: effect.answer ?? null,
      problem: effect.problem ?? null,
    };
  }

  private act(intent: Intent, text: string, moment: Moment): Effect {
    switch (intent.is) {
      case "tell":
        return this.told(intent, text, moment);
      case "ask":
        return { ...NONE, answer: answer(intent.query, this.keeper.history, moment) };
      case "correct":
        return this.correct(intent.correction, moment);
      case "undo":
        return this.keeper.undo() ? NONE : { ...NONE, problem: "nothing to undo" };
      case "redo":
        return this.keeper.redo() ? NONE : { ...NONE, problem: "nothing to redo" };
      case "verdict":
        return this.judge(intent.records, intent.outcome, moment);
      case "tick":
        return this.tick(intent, moment);
      default:
        return NONE;
    }
  }

  private told(intent: Extract<Intent, { is: "tell" }>, text: string, moment: Moment): Touched {
    const like = intent.again === null ? undefined : this.keeper.history.record(intent.again.record);
    if (intent.again === null || like === undefined) return this.tell(text, moment, intent.read ?? text);
    return this.keep(text, moment, text, {
      records: [workAgain(like, intent.again.where, text, moment)],
      usage: [],
    });
  }

  private tell(text: string, moment: Moment, spoken = text): Touched {
    return this.keep(text, moment, spoken, read(spoken, moment));
  }

  private keep(text: string, moment: Moment, spoken: string, reading: Reading): Touched {
    if (reading.records.length + reading.usage.length === 0) return NONE;
    this.keeper.mark();
    const { history } = this.keeper;
    const noteId = history.addNote(text, moment.said, "owner");
    const plan = link(reading.records, spoken, history, moment);
    const saved = this.keeper.save(plan, reading.usage, noteId, moment.said, "owner");
    return { ids: [...saved.made, ...saved.changed], made: saved.made.length, usage: saved.usage };
  }

  private correct(correction: Correction, moment: Moment): Effect {
    const amendment = amend(correction, this.scene, this.keeper.history, moment);
    if (amendment.is !== "amend") {
      return { ...NONE, problem: amendment.is === "which" ? "which" : amendment.why };
    }
    this.keeper.mark();
    return { ...NONE, ids: [...new Set(this.keeper.amend(amendment.changes))] };
  }

  private judge(ids: readonly RecordId[], outcome: string, moment: Moment): Touched {
    if (outcome === "later" || outcome === "untested") return NONE;
    this.keeper.mark();
    for (const id of ids) {
      this.keeper.judge(
        id,
        { outcome: outcome as "holding", when: moment.said.slice(0, 10), saidAt: moment.said, exposure: [] },
        null,
      );
    }
    return { ...NONE, ids };
  }

  private tick(intent: Extract<Intent, { is: "tick" }>, moment: Moment): Touched {
    const ground = { history: this.keeper.history, hemisphere: moment.hemisphere };
    const byTopic = intent.topic === null ? [] : poolOf(ground, intent.topic, {}, isOpen).slice(0, 1);
    const ids = [...intent.records, ...byTopic.map((record) => record.id)];
    this.keeper.mark();
    for (const id of ids) this.keeper.settle(id);
    return { ...NONE, ids };
  }

  private show(
    at: string,
    intent: Intent,
    records: readonly KeptRecord[],
    usage: readonly KeptUsage[],
  ): void {
    const showing: Showing = {
      at,
      of: "note",
      records: records.filter((record) => !record.removed).map(({ id, fields }) => ({ id, fields })),
      usage,
    };
    const changed = records.length + usage.length > 0;
    this.scene = {
      ...this.scene,
      last: changed ? showing : this.scene.last,
      shown: changed ? showing : this.scene.shown,
      asked: intent.is === "ask" ? intent.query : changed ? null : this.scene.asked,
    };
  }
}
