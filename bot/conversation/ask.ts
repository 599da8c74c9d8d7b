import { answer as answerTo } from "../../shared/memory/answer.ts";
import type { Answer } from "../../shared/memory/answer-data.ts";
import type { Query } from "../../shared/memory/query.ts";
import { answerReply } from "../replies/answers/answer-reply.ts";
import { momentOf } from "../rig/rig.ts";
import { dueAnswer, dueReply } from "./due.ts";
import type { Turn } from "./turn.ts";

const replyTo = (turn: Turn, query: Query, given: Answer) =>
  query.ask === "due" ? dueReply(turn, query, given) : answerReply(turn, given);

/** Answers a question; `hint` is said below the answer. */
export const ask = (turn: Turn, query: Query, hint = ""): void => {
  const found = answerTo(query, turn.store.history, momentOf(turn.now, turn.rig));
  const given = query.ask === "due" ? dueAnswer(turn, query, found) : found;
  turn.answer = given;
  const reply = replyTo(turn, query, given);
  turn.say({
    ...reply,
    text: hint === "" ? reply.text : `${reply.text}\n\n${hint}`,
    shows: { of: "answer", records: [...given.records, ...given.letGo].map(({ id }) => id), asked: query },
  });
};
