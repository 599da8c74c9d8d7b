import type { KeptRecord, RecordId } from "../../../shared/history.ts";
import { amend } from "../../../shared/memory/amend.ts";
import type { Amendment } from "../../../shared/memory/amendment.ts";
import { answer } from "../../../shared/memory/answer.ts";
import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Change, Correction } from "../../../shared/memory/correction.ts";
import { link } from "../../../shared/memory/link.ts";
import type { LinkPlan } from "../../../shared/memory/link-plan.ts";
import { EMPTY_TOPIC, type Query, type Topic } from "../../../shared/memory/query.ts";
import { EMPTY_SCENE, type Scene } from "../../../shared/memory/scene.ts";
import type { Draft, Hemisphere, Moment } from "../../../shared/reading.ts";
import type { RecordFields } from "../../../shared/record.ts";
import type { ComponentId } from "../../../shared/vocabulary.ts";
import { Keeper } from "./keeper.ts";

type Told = Partial<RecordFields> &
  Pick<RecordFields, "component"> & { readonly looked?: true; readonly doneBy?: string };

/** A draft as the reader gives it; what is not given is not told. Work by default. */
export const draft = ({ looked, doneBy, ...told }: Told, length: number): Draft => {
  const kind = told.kind ?? "repair";
  return {
    fields: {
      kind,
      where: null,
      action: kind === "check" ? "inspect" : null,
      materials: [],
      date: null,
      outcome: kind === "repair" ? "untested" : null,
      exposure: [],
      cost: null,
      fault: null,
      due: null,
      ...told,
    },
    evidence:
      looked === undefined ? {} : { action: { spans: [{ start: 0, end: 1 }], sure: 1, rule: "looked" } },
    span: { start: 0, end: length },
    brands: [],
    doneBy: doneBy ?? null,
  };
};

export const topic = (...components: ComponentId[]): Topic => ({
  ...EMPTY_TOPIC,
  named: components.map((component) => ({ component, sure: 1 })),
});

/** One invented rig's memory, told note by note at noon UTC. */
export class Rig {
  readonly keeper: Keeper;
  readonly hemisphere: Hemisphere;
  private scene: Scene = EMPTY_SCENE;

  constructor(hemisphere: Hemisphere = "north") {
    this.hemisphere = hemisphere;
    this.keeper = new Keeper(hemisphere);
  }

  private moment(day: string): Moment {
    return { said: `${day}T12:00:00Z`, zone: "UTC", hemisphere: this.hemisphere };
  }

  /** The plan for a note, without saving it. */
  plan(day: string, text: string, ...told: Told[]): LinkPlan {
    const drafts = told.map((each) => draft({ ...each }, text.length));
    return link(drafts, text, this.keeper.history, this.moment(day));
  }

  tell(day: string, text: string, ...told: Told[]): readonly RecordId[] {
    const moment = this.moment(day);
    const plan = this.plan(day, text, ...told);
    const noteId = this.keeper.history.addNote(text, moment.said, "owner");
    const { made, changed } = this.keeper.save(plan, [], noteId, moment.said, "owner");
    const ids = [...made, ...changed];
    const shown = { at: moment.said, of: "note" as const, records: this.all(ids), usage: [] };
    this.scene = { ...EMPTY_SCENE, last: shown, shown };
    return ids;
  }

  use(day: string, count: number, unit: "miles" | "km" | "nights"): void {
    const { said } = this.moment(day);
    const noteId = this.keeper.history.addNote(`${count} ${unit}`, said, "owner");
    const entry = this.keeper.history.addUsage(noteId, said, { count, unit, date: day });
    const shown = { at: said, of: "note" as const, records: [], usage: [entry] };
    this.scene = { ...EMPTY_SCENE, last: shown, shown };
  }

  amendment(day: string, change: Change | readonly Change[], more: Partial<Correction> = {}): Amendment {
    const changes = [change].flat() as readonly Change[];
    const correction: Correction = { target: { by: "last" }, changes, not: {}, ...more };
    return amend(correction, this.scene, this.keeper.history, this.moment(day));
  }

  correct(day: string, change: Change | readonly Change[], more: Partial<Correction> = {}): Amendment {
    const amendment = this.amendment(day, change, more);
    if (amendment.is === "amend") {
      this.keeper.mark();
      this.keeper.amend(amendment.changes);
    }
    return amendment;
  }

  ask(query: Query, day = "2026-01-01"): Answer {
    return answer(query, this.keeper.history, this.moment(day));
  }

  get(id: RecordId | undefined): KeptRecord {
    const record = id === undefined ? undefined : this.keeper.history.record(id);
    if (record === undefined) throw new Error(`No record ${String(id)}.`);
    return record;
  }

  all(ids: readonly RecordId[]): readonly KeptRecord[] {
    return ids.map((id) => this.get(id));
  }

  live(): readonly KeptRecord[] {
    return this.keeper.history.records({});
  }
}

/** A rig on record with one piece of work: the hubs greased. */
export const greased = (): Rig => {
  const rig = new Rig();
  rig.tell("2024-07-03", "greased the hubs last saturday with marine grease, 12 dollars", {
    component: "wheel-bearing",
    action: "lubricate",
    materials: ["marine grease"],
    date: "2024-06-29",
    cost: 12,
  });
  return rig;
};
