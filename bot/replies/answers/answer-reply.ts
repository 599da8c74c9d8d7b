import type { Answer } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { costReply } from "./cost.ts";
import { countReply } from "./count.ts";
import { lastReply } from "./last.ts";
import { listReply } from "./list.ts";
import { longestReply } from "./longest.ts";
import { openReply } from "./open.ts";
import { saidReply } from "./said.ts";
import { useReply } from "./use.ts";
import { worstReply } from "./worst.ts";
import { everReply, holdingReply } from "./yes-no.ts";

/** An answer as a person would give it. */
export const answerReply = (turn: Turn, answer: Answer): Reply => {
  switch (answer.kind) {
    case "last":
      return lastReply(turn, answer);
    case "list":
      return listReply(turn, answer);
    case "ever":
      return everReply(turn, answer);
    case "count":
      return countReply(turn, answer);
    case "holding":
      return holdingReply(turn, answer);
    case "open":
    case "buy":
      return openReply(turn, answer);
    case "cost":
      return costReply(turn, answer);
    case "longest":
      return longestReply(turn, answer);
    case "said":
      return saidReply(turn, answer);
    case "use":
      return useReply(turn, answer);
    case "worst":
      return worstReply(turn, answer);
    case "due":
      return listReply(turn, answer);
  }
};
