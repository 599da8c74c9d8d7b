import { capital } from "../../../shared/capital.ts";
import type { Answer, Life } from "../../../shared/memory/answer-data.ts";
import type { Reply, Turn } from "../../conversation/turn.ts";
import { numbered } from "../numbered.ts";
import { thingName } from "../record-line.ts";
import { doneWord, listed, plural, sayExposure } from "../words.ts";
import { nothingKnown } from "./parts.ts";

const DAYS_A_MONTH = 30.44;

/** A span of days in the unit people would use for it. */
export const saySpan = (days: number): string => {
  if (days < 14) return plural(Math.round(days), "day");
  if (days < 60) return plural(Math.round(days / 7), "week");
  if (days < 700) return plural(Math.round(days / DAYS_A_MONTH), "month");
  return `${(days / 365.25).toFixed(1).replace(/\.0$/, "")} years`;
};

/** How long it lasted so far, by what was told of it. */
const lasting = ({ lived, held }: Life): string => {
  const spans = [
    ...(lived.days === null ? [] : [saySpan(lived.days)]),
    ...lived.exposure
      .filter(({ unit }) => !["days", "weeks", "months", "seasons", "years"].includes(unit))
      .map(sayExposure),
  ];
  if (spans.length === 0) return held ? "no telling how long, no trouble told" : "no telling how long";
  if (!lived.seen) return `no trouble told in ${spans.join(", ")}`;
  return `${spans.join(", ")}${held ? " and holding" : ""}`;
};

const lifeLine = (life: Life): string => {
  const { fields } = life.record;
  const way =
    fields.materials.length === 0
      ? doneWord(fields.action)
      : `${doneWord(fields.action)} with ${listed(fields.materials)}`;
  return `${thingName(fields)}, ${way}: ${lasting(life)}`;
};

export const longestReply = (turn: Turn, answer: Answer): Reply =>
  answer.lives.length === 0
    ? { text: nothingKnown(turn, answer) }
    : { text: numbered(answer.lives.slice(0, 6).map((life) => `${capital(lifeLine(life))}.`)) };
