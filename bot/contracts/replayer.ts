import { basename } from "node:path";
import type { Update } from "grammy/types";
import type { Logger } from "pino";
import { Temporal } from "temporal-polyfill";
import type { Hearing } from "../../nlp/hear/hearing.ts";
import type { RecordId } from "../../shared/history.ts";
import type { Answer } from "../../shared/memory/answer-data.ts";
import type { OutboxItem } from "../../store/outbox.ts";
import type { Store } from "../../store/store.ts";
import { SetClock } from "../clock.ts";
import type { Deps } from "../conversation/handle.ts";
import { takeHeard } from "../conversation/heard.ts";
import { nextNudgeTime } from "../nudges/next-nudge-time.ts";
import { sendNudges } from "../nudges/send-nudges.ts";
import { localIso, rigOf } from "../rig/rig.ts";
import { handleItem } from "../workers/inbox-worker.ts";
import type { ReplayTurn } from "./replay-lines.ts";
import { buttonsOf, lastButton, textOf } from "./shown-messages.ts";

const CHANNEL = "replay";
const CHAT_ID = 1;
const NO_WEIGHTS = { tag: "no-model", problem: "There are no weights." } as const;

export type TurnLine = {
  readonly turn: number;
  readonly replies: readonly string[];
  readonly buttons: readonly string[];
  readonly records: readonly unknown[];
  readonly answer: unknown;
};
export type NudgeLine = {
  readonly nudge: true;
  readonly at: string;
  readonly text: string;
  readonly buttons: readonly string[];
  readonly records: readonly RecordId[];
};

/** Plays a conversation through the same inbox and handling as any message, by the turns' own clock. */
export class Replayer {
  private readonly store: Store;
  private readonly deps: Deps;
  private readonly log: Logger;
  private readonly ear: () => Hearing | undefined;
  private readonly clock = new SetClock(Temporal.Instant.fromEpochMilliseconds(0));
  private nextId: number;
  private turns = 0;

  constructor(store: Store, deps: Deps, ear: () => Hearing | undefined, log: Logger) {
    this.store = store;
    this.ear = ear;
    this.deps = deps;
    this.log = log;
    this.nextId = store.outbox.newestMessage(CHANNEL, CHAT_ID) + 1;
    const chat = { channel: CHANNEL, chatId: CHAT_ID };
    if (store.people.of(chat) === undefined) store.people.pair(chat, "you", this.clock.now().toString());
  }

  /** The nudges that fall due up to a moment. */
  nudgesUntil(until: Temporal.Instant): readonly NudgeLine[] {
    const lines: NudgeLine[] = [];
    if (this.turns === 0) return lines;
    for (;;) {
      const at = nextNudgeTime(this.store, this.clock.now());
      if (at === undefined || Temporal.Instant.compare(at, until) >= 0) return lines;
      this.clock.set(at);
      const { sent, records } = sendNudges(this.store, at);
      lines.push(...this.takeOut().map((item) => this.nudgeLine(item, at, records)));
      if (!sent) this.clock.set(at.add({ hours: 24 }));
    }
  }

  /** One turn, handled; a tap on a label that no message carries is an error. */
  async play(turn: ReplayTurn): Promise<TurnLine> {
    if (Temporal.Instant.compare(turn.at, this.clock.now()) > 0 || this.turns === 0) this.clock.set(turn.at);
    const updateId = this.nextId++;
    this.store.inbox.put(CHANNEL, updateId, this.updateFor(turn, updateId), this.clock.now().toString());
    this.turns++;
    const item = this.store.inbox.next();
    const handled = item === undefined ? undefined : handleItem(this.deps, item, this.clock, this.log);
    const turnIds = [...(handled === undefined ? [] : [handled.turnId]), ...(await this.hear())];
    const sent = this.takeOut();
    return {
      turn: this.turns,
      replies: sent.flatMap(textOf),
      buttons: sent.flatMap(buttonsOf).map(({ text }) => text),
      records: turnIds.flatMap((turnId) => this.recordsOf(turnId)),
      answer: handled?.answer == null ? null : this.answerLine(handled.answer),
    };
  }

  /** Hears the voice notes that wait; a replayed note's file id is its path. Returns the turns that came of it. */
  private async hear(): Promise<readonly number[]> {
    const turns: number[] = [];
    for (
      let next = this.store.hearings.next("to-fetch");
      next !== undefined;
      next = this.store.hearings.next("to-fetch")
    ) {
      const hearing = next;
      const heard = (await this.ear()?.hear(hearing.fileId ?? "")) ?? NO_WEIGHTS;
      const turn = this.store.transact(() =>
        takeHeard({ store: this.store, now: this.clock.now() }, hearing, heard),
      );
      if (turn !== undefined) turns.push(turn.turnId);
    }
    return turns;
  }

  private updateFor(turn: ReplayTurn, updateId: number): Partial<Update> {
    const person = { id: CHAT_ID, is_bot: false, first_name: "you" };
    const message = {
      message_id: this.nextId++,
      date: Math.floor(turn.at.epochMilliseconds / 1000),
      chat: { id: CHAT_ID, type: "private" as const, first_name: "you" },
      from: person,
    };
    if ("text" in turn) return { update_id: updateId, message: { ...message, text: turn.text } };
    if ("voice" in turn) {
      const voice = { file_id: turn.voice, file_unique_id: basename(turn.voice), duration: 0 };
      return { update_id: updateId, message: { ...message, voice } };
    }
    const button = lastButton(this.store, CHANNEL, CHAT_ID, turn.tap);
    if (button === undefined) throw new Error(`No message shows a button "${turn.tap}".`);
    return {
      update_id: updateId,
      callback_query: {
        id: String(updateId),
        from: person,
        chat_instance: CHANNEL,
        data: button.data,
        message: { ...message, message_id: button.messageId, text: "" },
      },
    };
  }

  /** Takes what waits in the outbox as delivered. */
  private takeOut(): readonly OutboxItem[] {
    const taken: OutboxItem[] = [];
    for (
      let item = this.store.outbox.next(CHANNEL);
      item !== undefined;
      item = this.store.outbox.next(CHANNEL)
    ) {
      const edited = item.edits === null ? undefined : this.store.outbox.get(item.edits)?.messageId;
      this.store.outbox.sent(item.id, edited ?? this.nextId++);
      taken.push(item);
    }
    return taken;
  }

  private recordsOf(turnId: number): readonly unknown[] {
    const ids = this.store.changedRecords(turnId);
    return ids.flatMap((id) => {
      const record = this.store.history.record(id);
      if (record === undefined) return [];
      return [{ id, ...record.fields, ...(record.removed ? { removed: true } : {}) }];
    });
  }

  private answerLine(answer: Answer): unknown {
    const ids = answer.records.map(({ id }) => id);
    const due =
      answer.kind === "due"
        ? answer.records.map(({ id }) => ({ record: id, day: this.store.looks.of(id)?.due ?? null }))
        : [];
    return {
      kind: answer.kind,
      records: ids,
      count: answer.count,
      cost: answer.cost,
      verdict: answer.verdict,
      due,
    };
  }

  private nudgeLine(item: OutboxItem, at: Temporal.Instant, records: readonly RecordId[]): NudgeLine {
    return {
      nudge: true,
      at: localIso(at, rigOf(this.store).zone),
      text: textOf(item).join("\n"),
      buttons: buttonsOf(item).map(({ text }) => text),
      records,
    };
  }
}
