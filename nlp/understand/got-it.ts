import { putsIn } from "../../shared/memory/work.ts";
import type { RecordFields } from "../../shared/record.ts";

const GOT_IT =
  /\b(?:(?:new|stronger|bigger|better|second[- ]hand|replacement|clean|fresh|spare) one\b|(?:got|bought|ordered|fitted) (?:it|that|them|one)\b|(?:is|it['’]?s|are|they['’]?re) (?:in|on|up|fitted|mounted)\b)/i;

const IS_IN =
  /\b(?:is|it['’]?s|are|they['’]?re) (?:in|on|up|fitted|mounted)(?= (?:now|today|since|and)\b|\s*[.,;!]|\s*$)/i;

/** "He came. It is in. 70.": whether a text says that what was to be put in has been. */
export const saysItIsIn = (text: string, { kind, action }: RecordFields): boolean =>
  kind === "todo" && putsIn(action) && IS_IN.test(text);

/** "Got the new one, it's on": whether what was to be got is there, or in. */
export const tellsItIsIn = (text: string): boolean => GOT_IT.test(text);
