import type { Change, Correction, DateChange, Target } from "../../../shared/memory/correction.ts";

const dateText = (to: DateChange): string => {
  if ("on" in to) return `date ${to.on}`;
  if ("dayOfMonth" in to) return `date day ${to.dayOfMonth}`;
  if ("weekday" in to) return `date weekday ${to.weekday} ${to.side}`;
  if ("season" in to) return `date season ${to.season} ${to.side}`;
  return "days" in to.shift ? `date ${to.shift.days} days` : `date ${to.shift.months} months`;
};

const changeText = (change: Change): string => {
  switch (change.change) {
    case "fields":
      return Object.entries(change.to)
        .map(([field, value]) => `${field} ${JSON.stringify(value).replaceAll('"', "")}`)
        .join(", ");
    case "date":
      return dateText(change.to);
    case "materials":
      return [
        "stuff",
        ...change.drop.map((each) => `-${each}`),
        ...change.add.map((each) => `+${each}`),
      ].join(" ");
    case "phrase":
      return `words ${change.to} for ${change.instead}`;
    case "done-by":
      return `by ${change.to ?? "me"}`;
    case "number":
      return ["number", change.to, change.unit].filter((part) => part !== null).join(" ");
    case "remove":
    case "part":
    case "join":
      return change.change;
  }
};

const targetText = (target: Target): string => {
  if (target.by === "number") return ` @${target.numbers.join(",")}`;
  if (target.by === "topic") return ` @${target.topic.named[0]?.component ?? target.topic.where.join(" ")}`;
  return "";
};

/** What a correction changes, and of which record, in the short form of the test lists. */
export const correctionText = ({ changes, target }: Correction): string =>
  changes.map(changeText).join(", ") + targetText(target);
