import type { RecordId } from "../shared/history.ts";
import type { Hemisphere } from "../shared/reading.ts";
import { boundAllDates } from "./bound-dates.ts";
import { Hearings } from "./hearings.ts";
import { StoredHistory } from "./history.ts";
import { Inbox } from "./inbox.ts";
import type { TurnStamp } from "./journal.ts";
import { Keeper } from "./keeper.ts";
import { Looks } from "./looks.ts";
import { Notes } from "./notes.ts";
import type { Db } from "./open.ts";
import { Outbox } from "./outbox.ts";
import { People } from "./people.ts";
import { Questions } from "./questions.ts";
import { Readiness } from "./readiness.ts";
import { SettingsTable } from "./settings.ts";
import { Trips } from "./trips.ts";
import { Turns } from "./turns.ts";

const BOUNDED_FOR = "dates.hemisphere";

/** All that is kept of one rig, over one open database. */
export class Store {
  readonly db: Db;
  readonly history: StoredHistory;
  readonly inbox: Inbox;
  readonly outbox: Outbox;
  readonly notes: Notes;
  readonly people: People;
  readonly settings: SettingsTable;
  readonly looks: Looks;
  readonly readiness: Readiness;
  readonly turns: Turns;
  readonly hearings: Hearings;
  readonly trips: Trips;
  readonly questions: Questions;

  constructor(db: Db) {
    this.db = db;
    this.history = new StoredHistory(db);
    this.inbox = new Inbox(db);
    this.outbox = new Outbox(db);
    this.notes = new Notes(db);
    this.people = new People(db);
    this.settings = new SettingsTable(db);
    this.looks = new Looks(db);
    this.readiness = new Readiness(db);
    this.turns = new Turns(db);
    this.hearings = new Hearings(db);
    this.trips = new Trips(db);
    this.questions = new Questions(db);
  }

  /** All or nothing: what `work` writes lands together, or not at all when it throws. */
  transact<T>(work: () => T): T {
    try {
      return this.db.transaction(work).immediate();
    } catch (error) {
      this.history.forget();
      throw error;
    }
  }

  /** Works out the day bounds of every date anew, when the rig has moved to the other half of the world. */
  boundDates(hemisphere: Hemisphere): void {
    if (this.settings.get(BOUNDED_FOR) === hemisphere) return;
    boundAllDates(this.db, hemisphere);
    this.settings.put(BOUNDED_FOR, hemisphere);
  }

  /** The records that a turn made or changed, in the order of the changes; a verdict changes its record. */
  changedRecords(turnId: number): readonly RecordId[] {
    const sql = `SELECT thing_id FROM changes WHERE turn_id = ? AND thing = 'records' ORDER BY id`;
    return [...new Set(this.db.prepare(sql).pluck().all(turnId).map(Number))];
  }

  keeper(stamp: TurnStamp, hemisphere: Hemisphere): Keeper {
    return new Keeper(this.db, stamp, hemisphere);
  }

  close(): void {
    this.db.close();
  }
}
