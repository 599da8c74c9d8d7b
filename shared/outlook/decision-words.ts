import { type ComponentId, componentName } from "../vocabulary.ts";
import type { Decision, MissingNumber } from "./deciding.ts";

const ASK: Record<MissingNumber, (name: string) => string> = {
  replaceCost: (name) => `What would a new ${name} cost you, fitted?`,
  replaceYears: (name) => `How many years would you give a new ${name}?`,
  mendCost: () => "What does the stuff for one mend cost you?",
  failureCost: () => "What does it cost you when it lets go: the mess, a lost day, a ruined floor?",
};

const yearsWords = (years: number): string => {
  if (!Number.isFinite(years)) return "for ever";
  return years < 1.5 ? `${Math.max(1, Math.round(years * 12))} months` : `${Math.round(years)} years`;
};

const money = (value: number): string => `${Math.round(value)}`;

/** The decision as a friend would put it, ending in the question that matters most, if any. */
export const decisionWords = (component: ComponentId, decision: Decision): string => {
  const name = componentName(component);
  const { facts, mendPerYear, replacePerYear, missing, recommend } = decision;
  const way = decision.ways[0];
  const seen = decision.ways.map(({ say, tries, failed, typicalYears }) => {
    const times = tries === 1 ? "once" : tries === 2 ? "twice" : `${tries} times`;
    return `${say.replace("{component}", name)}, ${times}${failed > 0 ? ` (${failed} gave out)` : ""}: the next should last about ${yearsWords(typicalYears)}`;
  });
  const lines = [`On the ${name} so far: ${seen.join("; ")}.`];
  lines.push(`Mending on comes to about ${money(mendPerYear)} a year, what a failure costs included.`);
  if (replacePerYear === null || recommend === null || way === undefined)
    lines.push(
      `A new one pays as soon as it costs less than about ${money(decision.breakEvenPrice)}, fitted.`,
    );
  else {
    lines.push(
      `A new one at ${money(facts.replaceCost ?? 0)} over ${yearsWords(facts.replaceYears)} comes to about ${money(replacePerYear)} a year; mending wins only if a mend holds longer than ${yearsWords(decision.breakEvenYears ?? 0)}.`,
    );
    const advice = {
      mend: "I'd mend it once more.",
      replace: "I'd replace it.",
      either: "It's a close call: do what suits the season.",
    }[recommend];
    lines.push(advice);
  }
  lines.push(`Weak spots: ${decision.weak.join("; ")}.`);
  if (missing !== null) lines.push(ASK[missing](name));
  return lines.join(" ");
};
