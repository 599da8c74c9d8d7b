import { capital } from "../capital.ts";
import { type ComponentId, componentName } from "../vocabulary.ts";
import type { Decision, MissingNumber, Way, WeakPoint } from "./decision.ts";
import { monthsWords } from "./say.ts";

const ASK: Record<MissingNumber, (name: string) => string> = {
  replaceCost: (name) => `What would a new ${name} cost you, fitted?`,
  replaceYears: (name) => `How many years would you give a new ${name}?`,
  mendCost: () => "What does the stuff for one mend cost you?",
  failureCost: () => "What does it cost you when it lets go: the mess, a lost day, a ruined floor?",
};

const yearsWords = (years: number): string => {
  return years < 1.5 ? `${Math.max(1, Math.round(years * 12))} months` : `${Math.round(years)} years`;
};

/** A sum in the owner's own currency. */
export type SayMoney = (amount: number) => string;

const timesWords = (tries: number): string =>
  tries === 1 ? "once" : tries === 2 ? "twice" : `${tries} times`;

const LIVES_NAMED = 3;

/** ", after 7 weeks, 8 months and 2 years" for the latest that gave out. */
const livesWords = ({ livedMonths }: Way): string => {
  const lives = livedMonths.slice(-LIVES_NAMED).map(monthsWords);
  const last = lives.pop();
  if (last === undefined) return "";
  return `, after ${lives.length === 0 ? last : `${lives.join(", ")} and ${last}`}`;
};

const goneWords = (way: Way): string => {
  const { tries, failed } = way;
  if (failed === 0) return tries === 1 ? ", and it holds so far" : ", and none gave out so far";
  const who = failed < tries ? failed : tries === 1 ? "it" : tries === 2 ? "both" : "all";
  return `, ${who} gave out${livesWords(way)}`;
};

const wayWords = (name: string, way: Way): string => {
  const done = `${capital(way.say.replace("{component}", name))}: done ${timesWords(way.tries)}`;
  return `${done}${goneWords(way)}. The next one should make about ${yearsWords(way.typicalYears)}.`;
};

const ADVICE = {
  mend: "I'd mend it once more.",
  replace: "I'd replace it.",
  either: "It's a close call, so do what suits the season.",
} as const;

const costWords = (
  name: string,
  money: SayMoney,
  { facts, mendPerYear, replacePerYear, breakEvenPrice, breakEvenYears }: Decision,
): string => {
  const mending = `Mending on comes to about ${money(mendPerYear)} a year, a failure's mess counted`;
  if (replacePerYear === null)
    return `${mending}; a new ${name} pays if it costs less than about ${money(breakEvenPrice)}, fitted.`;
  const buying = `a new one at ${money(facts.replaceCost ?? 0)} over ${yearsWords(facts.replaceYears)} to about ${money(replacePerYear)}`;
  const even =
    breakEvenYears === null || !Number.isFinite(breakEvenYears)
      ? "Mending can't get that cheap, however long it holds."
      : `Mending wins if the next one makes more than about ${yearsWords(breakEvenYears)}.`;
  return `${mending}, ${buying}. ${even}`;
};

const weakWords = (point: WeakPoint, money: SayMoney): string => {
  switch (point.is) {
    case "no failure yet":
      return "none of these mends has failed yet, so its life is a guess";
    case "one failure":
      return "it rests on one failure";
    case "guessed failure cost":
      return `I put what a failure costs you at ${money(point.amount)}`;
    case "guessed mend cost":
      return `I put the stuff for a mend at ${money(point.amount)}`;
    case "guessed years":
      return `I take a new one to last about ${yearsWords(point.years)}`;
    case "own hours":
      return "your own hours are not counted";
    case "safety":
      return "money isn't the point where somebody can get hurt";
  }
};

/** The decision as a friend would put it, ending in the question that matters most, if any. */
export const decisionWords = (component: ComponentId, decision: Decision, sayMoney: SayMoney): string => {
  const name = componentName(component);
  const money: SayMoney = (amount) => sayMoney(Math.round(amount));
  const { missing, recommend, ways, weak } = decision;
  const cost = costWords(name, money, decision);
  const parts = [
    recommend === null ? cost : `${ADVICE[recommend]} ${cost}`,
    ...ways.map((way) => wayWords(name, way)),
    `Weak spots: ${weak.map((point) => weakWords(point, money)).join("; ")}.`,
    ...(missing === null ? [] : [ASK[missing](name)]),
  ];
  return parts.join("\n");
};
