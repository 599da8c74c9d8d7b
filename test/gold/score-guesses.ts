import { speakingSigns } from "../../nlp/ask/spoken-of.ts";
import { LEARNT_TALK } from "../../nlp/judges/talk.ts";
import { talksIn } from "./talk.ts";

const questions = process.argv.slice(2).flatMap((path) =>
  talksIn(path).flatMap(({ turns }) =>
    turns.flatMap(({ text, expect }) => {
      const component = expect?.answer?.component;
      return component === undefined ? [] : [{ text, component }];
    }),
  ),
);
const isRight = ({ text, component }: (typeof questions)[number]): boolean => {
  const [first] = [...LEARNT_TALK.spoken(speakingSigns(text))].toSorted(([, a], [, b]) => b - a);
  return first?.[0] === component;
};
const right = questions.filter(isRight).length;
console.log(`first guess: ${right}/${questions.length} = ${(right / questions.length).toFixed(3)}`);
