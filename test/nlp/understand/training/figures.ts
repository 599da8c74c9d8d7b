import { fileURLToPath } from "node:url";
import { ABOUT, ASKS, type LearntTalk, MESSAGES, OFFERED } from "../../../../nlp/judges/talk.ts";
import { regress } from "../../read/training/linear.ts";
import { writeLearnt } from "../../read/training/written.ts";
import { talkLessons } from "./examples.ts";
import { KEPT_OUT } from "./kept-out.ts";
import { knownMessages } from "./talk.ts";

/** `tsx test/nlp/understand/training/figures.ts [FILE...]`: learns the judges of talk from all files but those kept out and those named. */
const keptOut = new Set([...KEPT_OUT, ...process.argv.slice(2)]);
const FILE = fileURLToPath(new URL("../../../../nlp/judges/talk.json", import.meta.url));

/** Statements that look like questions or corrections count as often as so many others. */
const HARD = /^(?:statements-\d+\.jsonl|notes\.txt)$/;
const OFTEN = 6;

const messages = [...knownMessages()].flatMap(([name, known]) =>
  keptOut.has(name) ? [] : HARD.test(name) ? Array.from({ length: OFTEN }, () => known).flat() : known,
);
const lessons = talkLessons(messages);
process.stderr.write(
  `${String(messages.length)} messages, ${String(lessons.message.length)} judged, ${String(lessons.offer.length)} values, ${String(lessons.ask.length)} questions\n`,
);
const learnt: LearntTalk = {
  message: regress(lessons.message, MESSAGES),
  offer: regress(lessons.offer, OFFERED),
  ask: regress(lessons.ask, ASKS),
  about: regress(lessons.about, ABOUT),
};
writeLearnt(FILE, learnt);
