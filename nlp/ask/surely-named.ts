import { plainWords } from "../../shared/memory/words.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { weighMentions } from "./heads.ts";
import { mentionsIn } from "./names.ts";

/** A name as sure as this stands for its thing by itself. */
export const SURE_NAME = 0.8;

/** The things that a text surely names. */
export const surelyNamed = (text: string): readonly ComponentId[] =>
  weighMentions(plainWords(text), mentionsIn(plainWords(text))).flatMap(({ named }) =>
    named.flatMap(({ component, sure }) => (sure >= SURE_NAME ? [component] : [])),
  );
