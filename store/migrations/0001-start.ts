import type { Migration } from "./migration.ts";

export const start: Migration = {
  id: 1,
  name: "start",
  up: `
    CREATE TABLE settings (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;

    CREATE TABLE people (id INTEGER PRIMARY KEY, name TEXT NOT NULL, since TEXT NOT NULL);
    CREATE TABLE chats (
      channel TEXT NOT NULL, chat_id INTEGER NOT NULL, person_id INTEGER NOT NULL REFERENCES people (id),
      PRIMARY KEY (channel, chat_id)
    ) WITHOUT ROWID;

    CREATE TABLE inbox (
      id INTEGER PRIMARY KEY, channel TEXT NOT NULL, update_id INTEGER NOT NULL, body TEXT NOT NULL,
      received_at TEXT NOT NULL, state TEXT NOT NULL DEFAULT 'waiting', attempts INTEGER NOT NULL DEFAULT 0,
      last_error TEXT, UNIQUE (channel, update_id)
    );
    CREATE INDEX inbox_waiting ON inbox (id) WHERE state = 'waiting';

    CREATE TABLE outbox (
      id INTEGER PRIMARY KEY, channel TEXT NOT NULL, chat_id INTEGER NOT NULL, method TEXT NOT NULL,
      payload TEXT NOT NULL, edits INTEGER REFERENCES outbox (id), shows TEXT NOT NULL DEFAULT '[]',
      turn_id INTEGER, created_at TEXT NOT NULL, state TEXT NOT NULL DEFAULT 'waiting',
      attempts INTEGER NOT NULL DEFAULT 0, message_id INTEGER, last_error TEXT
    );
    CREATE INDEX outbox_waiting ON outbox (id) WHERE state = 'waiting';
    CREATE INDEX outbox_message ON outbox (channel, chat_id, message_id);
    CREATE INDEX outbox_shown ON outbox (channel, chat_id, id) WHERE shows ->> '$.of' IS NOT NULL;
    CREATE INDEX outbox_note ON outbox (shows ->> '$.noteId') WHERE shows ->> '$.noteId' IS NOT NULL;
    CREATE INDEX outbox_chat ON outbox (channel, chat_id, created_at);
    CREATE INDEX outbox_turn ON outbox (turn_id);

    CREATE TABLE notes (
      id INTEGER PRIMARY KEY, inbox_id INTEGER REFERENCES inbox (id), channel TEXT NOT NULL,
      chat_id INTEGER NOT NULL, message_id INTEGER NOT NULL, person_id INTEGER NOT NULL REFERENCES people (id),
      said_at TEXT NOT NULL, text TEXT NOT NULL, heard TEXT, media TEXT, media_kind TEXT,
      told INTEGER NOT NULL DEFAULT 0
    );
    CREATE INDEX notes_message ON notes (channel, chat_id, message_id);
    CREATE VIRTUAL TABLE notes_words USING fts5 (text, content = 'notes', content_rowid = 'id', tokenize = 'porter unicode61');
    CREATE TRIGGER notes_added AFTER INSERT ON notes BEGIN
      INSERT INTO notes_words (rowid, text) VALUES (new.id, new.text);
    END;
    CREATE TRIGGER notes_reworded AFTER UPDATE OF text ON notes BEGIN
      INSERT INTO notes_words (notes_words, rowid, text) VALUES ('delete', old.id, old.text);
      INSERT INTO notes_words (rowid, text) VALUES (new.id, new.text);
    END;

    CREATE TABLE hearings (
      note_id INTEGER PRIMARY KEY REFERENCES notes (id), state TEXT NOT NULL, attempts INTEGER NOT NULL DEFAULT 0,
      file_id TEXT, seconds REAL, reply INTEGER REFERENCES outbox (id), outcome TEXT, last_error TEXT
    );
    CREATE INDEX hearings_reply ON hearings (reply);
    CREATE INDEX hearings_state ON hearings (state, note_id);

    CREATE TABLE records (
      id INTEGER PRIMARY KEY, note_id INTEGER NOT NULL REFERENCES notes (id), said_at TEXT NOT NULL,
      kind TEXT NOT NULL, component TEXT NOT NULL, place TEXT, action TEXT, materials TEXT NOT NULL,
      date TEXT, date_from TEXT, date_to TEXT, sort_day TEXT NOT NULL, outcome TEXT, exposure TEXT NOT NULL, cost REAL,
      fault TEXT, due TEXT,
      done_by TEXT, brands TEXT NOT NULL, evidence TEXT NOT NULL, span_start INTEGER NOT NULL, span_end INTEGER NOT NULL,
      line INTEGER, closed_by INTEGER REFERENCES records (id), settled INTEGER NOT NULL DEFAULT 0,
      removed INTEGER NOT NULL DEFAULT 0
    );
    CREATE INDEX records_note ON records (note_id);
    CREATE INDEX records_component ON records (component, sort_day DESC, id DESC) WHERE removed = 0;
    CREATE INDEX records_day ON records (sort_day DESC, id DESC) WHERE removed = 0;
    CREATE INDEX records_date ON records (date_from, date_to, kind, cost) WHERE removed = 0;
    CREATE INDEX records_work ON records (action, sort_day DESC, id DESC) WHERE removed = 0;
    CREATE INDEX records_outcome ON records (outcome, sort_day DESC, id DESC) WHERE removed = 0;
    CREATE INDEX records_closed_by ON records (closed_by) WHERE closed_by IS NOT NULL;
    CREATE INDEX records_line ON records (line);
    CREATE INDEX records_open ON records (sort_day DESC, id DESC)
      WHERE removed = 0 AND settled = 0 AND closed_by IS NULL AND kind IN ('todo', 'fault');

    CREATE TABLE verdicts (
      id INTEGER PRIMARY KEY, record_id INTEGER NOT NULL REFERENCES records (id), outcome TEXT NOT NULL,
      date TEXT NOT NULL, said_at TEXT NOT NULL, exposure TEXT NOT NULL, note_id INTEGER REFERENCES notes (id),
      removed INTEGER NOT NULL DEFAULT 0
    );
    CREATE INDEX verdicts_record ON verdicts (record_id);

    CREATE TABLE use_log (
      id INTEGER PRIMARY KEY, note_id INTEGER NOT NULL REFERENCES notes (id), said_at TEXT NOT NULL,
      unit TEXT NOT NULL, count REAL, reading REAL, date TEXT, date_from TEXT, date_to TEXT,
      removed INTEGER NOT NULL DEFAULT 0
    );
    CREATE INDEX use_log_date ON use_log (date_from);

    CREATE TABLE looks (
      record_id INTEGER PRIMARY KEY REFERENCES records (id), due TEXT NOT NULL, why TEXT NOT NULL,
      nudged_at TEXT, put_off_to TEXT
    );
    CREATE INDEX looks_due ON looks (due);

    CREATE TABLE readiness (
      record_id INTEGER PRIMARY KEY REFERENCES records (id), at TEXT NOT NULL, words TEXT NOT NULL, told_at TEXT
    );

    CREATE TABLE changes (
      id INTEGER PRIMARY KEY, turn_id INTEGER NOT NULL, at TEXT NOT NULL, person_id INTEGER,
      thing TEXT NOT NULL, thing_id TEXT NOT NULL, field TEXT NOT NULL, was TEXT NOT NULL, became TEXT NOT NULL,
      undone_in INTEGER
    );
    CREATE INDEX changes_turn ON changes (turn_id);
    CREATE INDEX changes_thing ON changes (thing, thing_id);

    CREATE TABLE turns (
      id INTEGER PRIMARY KEY, inbox_id INTEGER, channel TEXT NOT NULL, chat_id INTEGER NOT NULL,
      person_id INTEGER, at TEXT NOT NULL, note_id INTEGER, undoes INTEGER REFERENCES turns (id)
    );
    CREATE INDEX turns_note ON turns (note_id) WHERE note_id IS NOT NULL;
    CREATE INDEX turns_chat ON turns (channel, chat_id, id);

    CREATE TABLE trips (
      id INTEGER PRIMARY KEY, leaves TEXT NOT NULL, returns TEXT, miles REAL, ticked TEXT NOT NULL DEFAULT '[]',
      state TEXT NOT NULL DEFAULT 'ahead', removed INTEGER NOT NULL DEFAULT 0
    );

    CREATE TABLE questions (
      channel TEXT NOT NULL, chat_id INTEGER NOT NULL, asked TEXT NOT NULL, at TEXT NOT NULL,
      PRIMARY KEY (channel, chat_id)
    ) WITHOUT ROWID;
  `,
};
