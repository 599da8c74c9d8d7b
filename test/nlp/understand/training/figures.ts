import { fileURLToPath } from "node:url";
import { ABOUT, ASKS, type LearntTalk, MESSAGES, OFFERED, spokenBy } from "../../../../nlp/judges/talk.ts";
import { shares, weighing } from "../../../../nlp/read/linear.ts";
import { fitLayers } from "../../read/training/layered.ts";
import { fitClasses, fitShares, regress } from "../../read/training/linear.ts";
import { writeLearnt } from "../../read/training/written.ts";
import { type TalkLessons, talkLessons, whichLessons } from "./examples.ts";
import { KEPT_OUT } from "./kept-out.ts";
import { calledLessons, knownApart, learnSpoken } from "./spoken.ts";
import { knownMessages } from "./talk.ts";

/** `tsx test/nlp/understand/training/figures.ts [FILE...]`: learns the judges of talk from all files but those kept out and those named. */
const keptOut = new Set([...KEPT_OUT, ...process.argv.slice(2)]);
const fileAt = (name: string): string =>
  fileURLToPath(new URL(`../../../../nlp/judges/${name}`, import.meta.url));

/** Statements that look like questions or corrections count as often as so many others. */
const HARD = /^(?:statements-\d+\.jsonl|notes\.txt)$/;
const OFTEN = 6;
/** So do messages that tell nothing at all. */
const CHAT = /^chat-\d+\.jsonl$/;
const CHAT_OFTEN = 3;

const timesOf = (name: string): number => (HARD.test(name) ? OFTEN : CHAT.test(name) ? CHAT_OFTEN : 1);

const told = [...(await knownMessages(keptOut))].map(([name, known]) => ({ known, times: timesOf(name) }));
const messages = told.flatMap(({ known }) => known);
const often = <T>(lessons: readonly T[], times: number): readonly T[] =>
  Array.from({ length: times }, () => lessons).flat();
const called = calledLessons();
const speaking = learnSpoken(messages, called, [1, 2]);
const spoken = spokenBy(speaking);
const which = fitShares(
  told.flatMap(({ known, times }) => often(whichLessons(known, spoken), times)),
  { pull: 0.5 },
);
const chosen = weighing(which, ["right"]);
const each = told.map(({ known, times }) => ({
  lessons: talkLessons(known, { which: (signs) => shares(chosen, signs), spoken }),
  times,
}));
const all = <K extends keyof TalkLessons>(of: K): TalkLessons[K][number][] =>
  each.flatMap(({ lessons, times }) => often<TalkLessons[K][number]>(lessons[of], times));
const lessons = {
  message: all("message"),
  offer: all("offer"),
  ask: all("ask"),
  about: all("about"),
  thing: all("thing"),
};
process.stderr.write(
  `${String(messages.length)} messages, ${String(lessons.message.length)} judged, ${String(lessons.offer.length)} values, ${String(lessons.ask.length)} questions\n`,
);
writeLearnt(fileAt("speaking.json"), { spoken: speaking });
writeLearnt(fileAt("known.json"), { known: fitShares(knownApart(messages, called), { pull: 1 }) });
writeLearnt(fileAt("messages.json"), {
  message: fitLayers(lessons.message, [...MESSAGES, ""], {
    hidden: 48,
    least: 8,
    rounds: 4,
    step: 0.004,
  }),
  plainly: fitClasses(lessons.message, [...MESSAGES, ""], {
    pull: 0.2,
    smallest: 0.06,
    rounds: 5,
    step: 0.04,
  }),
} satisfies Partial<LearntTalk>);
writeLearnt(fileAt("asking.json"), {
  ask: fitLayers(lessons.ask, ASKS, { rounds: 12 }),
  about: regress(lessons.about, ABOUT, { smallest: 0.1 }),
  thing: fitShares(lessons.thing, { pull: 1 }),
} satisfies Partial<LearntTalk>);
writeLearnt(fileAt("correcting.json"), {
  offer: fitLayers(lessons.offer, [...OFFERED, ""], {
    hidden: 32,
    least: 5,
    leftOut: 0.4,
    rounds: 4,
    step: 0.004,
  }),
  which,
} satisfies Partial<LearntTalk>);
