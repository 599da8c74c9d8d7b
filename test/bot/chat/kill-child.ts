import Database from "better-sqlite3";
import { createChatServer } from "../../../bot/chat/server.ts";
import { createChatLog } from "../../../store/chat-log.ts";

/** The chat server alone on a database that exists; says its address, then runs until it is killed. */
const [, , file = "", filesDir = "", token = ""] = process.argv;
const db = new Database(file);
db.pragma("journal_mode = WAL");
db.pragma("synchronous = FULL");
const server = createChatServer({ log: createChatLog(db), filesDir, token, port: 0 });
process.stdout.write(`${(await server.start()).url}\n`);
