import { speakingSigns } from "../../../../nlp/ask/spoken-of.ts";
import { spokenBy } from "../../../../nlp/judges/talk.ts";
import type { LearntLayers } from "../../../../nlp/read/layered.ts";
import { COMPONENTS } from "../../../../shared/vocabulary.ts";
import { fitLayers } from "../../read/training/layered.ts";
import type { Choice, Example } from "../../read/training/linear.ts";
import { ownNames } from "../../read/training/names.ts";
import { KEPT_OUT, knownNotes } from "../../read/training/notes.ts";
import { knownLessons } from "./examples.ts";
import type { KnownMessage } from "./known.ts";

/** What a question speaks of; nothing, where it is about the whole rig. */
const asked = ({ is, text, component, ofAll }: KnownMessage): Example[] =>
  is === "question" && (component !== undefined || ofAll === true)
    ? [{ signs: speakingSigns(text), right: component ?? "" }]
    : [];

/** What owners call things when they don't use the ordinary name. */
const roundabout = (): Example[] =>
  ownNames().map(({ text, component }) => ({ signs: speakingSigns(text), right: component }));

/** What things are called in notes, and in other words than their names, and what is said of one alone. */
export const calledLessons = (): Example[] => [...inNotes(), ...roundabout()];

/** As many words as are said of one thing, and not of what else goes on. */
const SHORT = 30;

const inNotes = (): Example[] =>
  knownNotes()
    .filter(({ set }) => !KEPT_OUT.has(set))
    .flatMap(({ text, records }) => {
      const called = records.flatMap(({ named, component }) =>
        named == null ? [] : [{ signs: speakingSigns(named), right: component }],
      );
      const [only, ...others] = records;
      const isShort = text.split(/\s+/).length <= SHORT;
      return only === undefined || others.length > 0 || !isShort
        ? called
        : [...called, { signs: speakingSigns(text), right: only.component }];
    });

/** What words speak of, learnt once from each seed. */
export const learnSpoken = (
  messages: readonly KnownMessage[],
  called: readonly Example[],
  seeds: readonly number[] = [1],
): readonly LearntLayers[] =>
  seeds.map((seed) =>
    fitLayers([...messages.flatMap(asked), ...called], [...COMPONENTS, ""], { rounds: 8, seed }),
  );

/** As many parts as the messages are cut into, in runs of so many: what is said of one rig stays together. */
const PARTS = 5;
const RUN = 400;

const partOf = (at: number): number => Math.floor(at / RUN) % PARTS;

/**
 * What questions teach about which of the things on record they are about. What a judge says that such words speak of is a
 * sign there, and it must not have met them: it is learnt for each part of the messages from the others.
 */
export const knownApart = (messages: readonly KnownMessage[], called: readonly Example[]): Choice[] => {
  return Array.from({ length: PARTS }, (_, nth) => nth).flatMap((nth) => {
    const mine = messages.filter((_, at) => partOf(at) === nth);
    const others = messages.filter((_, at) => partOf(at) !== nth);
    return knownLessons(mine, spokenBy(learnSpoken(others, called)));
  });
};
