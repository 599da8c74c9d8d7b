import { Temporal } from "temporal-polyfill";
import { Replayer } from "../../../../bot/contracts/replayer.ts";
import { sceneOf } from "../../../../bot/conversation/scene.ts";
import { Turn } from "../../../../bot/conversation/turn.ts";
import { createLog } from "../../../../bot/log.ts";
import { foundRig, rigOf } from "../../../../bot/rig/rig.ts";
import type { RecordId } from "../../../../shared/history.ts";
import type { Scene, Showing, Shown } from "../../../../shared/memory/scene.ts";
import { openDatabase } from "../../../../store/open.ts";
import { Store } from "../../../../store/store.ts";

type Rig = { readonly zone: string; readonly hemisphere: "north" | "south" };
type Said = { readonly at: string; readonly text: string };

const CHAT = { channel: "replay", chatId: 1 };

/** The talk of one rig as it is really met: what was said is played, and what a next message is heard against is seen. */
export class Met {
  readonly #store = new Store(openDatabase(":memory:"));
  readonly #replayer: Replayer;
  /** Each record as last seen, so that it is the same object wherever it shows, until it is changed. */
  readonly #seen = new Map<RecordId, Shown>();

  constructor({ zone, hemisphere }: Rig) {
    foundRig(this.#store, { zone, hemisphere });
    const deps = { store: this.#store, hears: { ready: () => true } };
    this.#replayer = new Replayer(this.#store, deps, () => undefined, createLog("silent", []));
  }

  async tell({ at, text }: Said): Promise<void> {
    const said = { at: Temporal.Instant.from(at), text };
    this.#replayer.nudgesUntil(said.at);
    await this.#replayer.play(said);
  }

  /** What a message would be heard against. Throws a RangeError when `at` is no instant. */
  sceneFor({ at, text }: Said): Scene {
    const scene = sceneOf(this.#turnAt(at), { id: 0, said: Temporal.Instant.from(at), text }, null);
    return {
      ...scene,
      last: this.#known(scene.last),
      shown: this.#known(scene.shown),
      older: scene.older.map((each) => this.#one(each)),
      spokenOf: scene.spokenOf.map((each) => this.#one(each)),
    };
  }

  /** All records so far, newest first. */
  told(): readonly Shown[] {
    const { history } = this.#store;
    return history
      .records({})
      .map(({ id, fields, noteId }) => this.#one({ id, fields, words: history.note(noteId)?.text ?? "" }));
  }

  close(): void {
    this.#store.close();
  }

  #turnAt(at: string): Turn {
    const store = this.#store;
    const person = store.people.of(CHAT);
    if (person === undefined) throw new Error("Nobody is paired.");
    const rig = rigOf(store);
    const keeper = store.keeper({ turnId: 0, at, personId: person.id }, rig.hemisphere);
    return new Turn({ store, keeper, turnId: 0, chat: CHAT, person, rig, now: Temporal.Instant.from(at) });
  }

  #known(showing: Showing | null): Showing | null {
    return showing === null ? null : { ...showing, records: showing.records.map((each) => this.#one(each)) };
  }

  #one(shown: Shown): Shown {
    const known = this.#seen.get(shown.id);
    if (known !== undefined && JSON.stringify(known) === JSON.stringify(shown)) return known;
    this.#seen.set(shown.id, shown);
    return shown;
  }
}
