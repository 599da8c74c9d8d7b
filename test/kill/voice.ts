import { readFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { z } from "zod";
import { SAMPLE_MODEL } from "../../nlp/hear/find-model.ts";
import { DATABASE_FILE, openDatabase } from "../../store/open.ts";
import { PageClient } from "../help/page-client.ts";
import { temporaryFolder } from "../help/store.ts";
import { killed, randomFrom, startProgram } from "./running.ts";

const VOICES = new URL("../../samples/voice/", import.meta.url);
const notesSchema = z.array(z.object({ file: z.string() }));

export type VoiceTally = {
  readonly kills: number;
  readonly notes: number;
  readonly transcribed: number;
  /** Notes whose words were taken before those of a note recorded earlier. */
  readonly outOfOrder: number;
  readonly takenTwice: number;
};

const sounds = (): readonly Uint8Array<ArrayBuffer>[] =>
  notesSchema
    .parse(JSON.parse(readFileSync(new URL("notes.json", VOICES), "utf8")))
    .map(({ file }) => new Uint8Array(readFileSync(new URL(file, VOICES))));

const numbers = (home: string, sql: string): readonly number[] => {
  const db = openDatabase(join(home, DATABASE_FILE));
  const rows = db.prepare(sql).pluck().all().map(Number);
  db.close();
  return rows;
};

const waiting = (home: string): number =>
  numbers(home, "SELECT count(*) FROM hearings WHERE state IN ('to-fetch', 'to-hear')")[0] ?? 0;

/** Queues voice notes, kills the program at random instants while it listens, and counts what was made of them. */
export const killWhileListening = async (notes: number, kills: number, seed: number): Promise<VoiceTally> => {
  const random = randomFrom(seed);
  const home = temporaryFolder();
  const env = { HOLDFAST_MODEL: SAMPLE_MODEL };
  let running = await startProgram(home, env);
  const client = new PageClient(running.url);
  await client.enter();
  await client.say(running.code ?? "");
  const all = sounds();
  for (let note = 0; note < notes; note++) {
    const sound = all[note % all.length];
    if (sound !== undefined) await client.upload("voice", `note-${note}.ogg`, sound, "audio/ogg");
  }
  for (let kill = 0; kill < kills; kill++) {
    await wait(500 + random() * 2500);
    await killed(running.child);
    running = await startProgram(home, env);
  }
  while (waiting(home) > 0) await wait(500);
  await killed(running.child);
  const taken = numbers(
    home,
    "SELECT note_id FROM turns WHERE note_id IN (SELECT note_id FROM hearings) AND id NOT IN (SELECT min(id) FROM turns GROUP BY note_id) ORDER BY id",
  );
  return {
    kills,
    notes,
    transcribed: numbers(home, "SELECT note_id FROM hearings WHERE state = 'heard'").length,
    outOfOrder: taken.filter((id, index) => id < (taken[index - 1] ?? 0)).length,
    takenTwice: taken.length - new Set(taken).size,
  };
};
