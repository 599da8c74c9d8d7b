import type { Temporal } from "temporal-polyfill";
import type { History } from "../history.ts";
import type { Moment } from "../reading.ts";
import type { Answer } from "./answer-data.ts";
import { answerEver } from "./answer-ever.ts";
import { answerHolding, answerState } from "./answer-holding.ts";
import { answerLast } from "./answer-last.ts";
import { answerLongest } from "./answer-longest.ts";
import { answerBuy, answerOpen } from "./answer-open.ts";
import { answerTo } from "./answer-parts.ts";
import { answerCost, answerCount, answerList } from "./answer-tally.ts";
import { answerUse } from "./answer-use.ts";
import { answerSaid } from "./answer-words.ts";
import { answerWorst } from "./answer-worst.ts";
import { type Ground, poolOf } from "./pool.ts";
import type { Query } from "./query.ts";
import { isLive } from "./told.ts";
import { dayOf } from "./when.ts";

const answerOn = (ground: Ground, query: Query, today: Temporal.PlainDate): Answer => {
  switch (query.ask) {
    case "last":
      return query.focus === "state" ? answerState(ground, query) : answerLast(ground, query);
    case "list":
      return answerList(ground, query);
    case "ever":
      return answerEver(ground, query);
    case "count":
      return answerCount(ground, query);
    case "holding":
      return answerHolding(ground, query);
    case "open":
      return answerOpen(ground, query);
    case "buy":
      return answerBuy(ground, query);
    case "cost":
      return answerCost(ground, query);
    case "longest":
      return answerLongest(ground, query, today);
    case "said":
      return answerSaid(ground, query);
    case "use":
      return answerUse(ground, query);
    case "worst":
      return answerWorst(ground, query);
    case "due":
      return answerTo(query, { records: poolOf(ground, query.topic, { limit: 300 }, isLive) });
  }
};

/** Answers a question from what is kept. Looks up only what the question names; the hemisphere bounds the seasons. */
export const answer = (query: Query, history: History, now: Moment): Answer =>
  answerOn({ history, hemisphere: now.hemisphere }, query, dayOf(now));
