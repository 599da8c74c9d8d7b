import { expect, it } from "vitest";
import { settled } from "../../../nlp/ask/thing-signs.ts";
import { topicOf } from "../../../nlp/ask/topic.ts";

const WORDS = "from the bed to the window it rattles";
const rates = (share: number) => (signs: readonly (readonly string[])[]) =>
  signs.map((_, at) => (at === 1 ? share : 0));

it("puts the thing that the judge is sure of first, and the others a step behind", () => {
  const topic = topicOf(WORDS);
  const [first, second] = settled(topic, WORDS, rates(0.9)).named;
  expect(first?.component).toBe(topic.named[1]?.component);
  expect(second?.sure).toBeLessThan(0.7);
});

it("leaves what is named as it is where the judge is sure of nothing", () => {
  expect(settled(topicOf(WORDS), WORDS, rates(0.2))).toEqual(topicOf(WORDS));
});

it("hears money, and no work, in what somebody charged", () => {
  expect(topicOf("what did they charge us for the slide").actions).toEqual([]);
  expect(topicOf("when did I charge the battery").actions).not.toEqual([]);
});
