import { plain } from "../correct/pieces.ts";
import { listTicksIn } from "./list-ticks.ts";

type Answer = "done" | "later";

/** What was seen to of several things asked about: by number, and the rest (null: nothing is said of it). */
export type SeenTo = { readonly numbers: ReadonlyMap<number, Answer>; readonly rest: Answer | null };

const DONE =
  /^(?:(?:yes|yep|ok|okay|all|just|i|we|ive|weve|its|thats|theyre|both|they are|it is|they were|have|has been|already) )*(?:done|did|did (?:it|that|them|those|both|all of (?:it|them))|done (?:it|that|them|those)|checked|checked (?:it|them)|seen to|all done|sorted|finished|looked at|all good|all fine|good|fine)(?: (?:now|already|today|this morning|yesterday|too|all))*$/;
const LATER =
  /^(?:(?:no|not|maybe|ill do it|ask me|remind me|all|both|them|do it) )*(?:later|not now|not yet|tomorrow|next week|another day|another time|again later|skip|snooze|yet|now)(?: (?:please|thanks))*$/;
const REST =
  /^(?:and )?(?:the )?(?:rest|others|other ones|other)(?: (?:is|are))? (done|later|not yet|tomorrow)$/;
const NUMBERS_LATER = /^(.+?) (?:later|not yet|tomorrow|next week)$/;

const numbersIn = (piece: string): readonly (readonly [number, Answer])[] | undefined => {
  const later = NUMBERS_LATER.exec(piece)?.[1];
  const ticks = listTicksIn(later ?? piece);
  if (ticks === undefined || ticks.lines === "all" || (later === undefined && ticks.plain)) return undefined;
  const answer = later !== undefined || !ticks.done ? "later" : "done";
  return ticks.lines.map((line) => [line, answer] as const);
};

const wholeIn = (words: string): Answer | undefined => {
  if (LATER.test(words)) return "later";
  return DONE.test(words) ? "done" : undefined;
};

/** "Done", "all later", "1 and 3 done, 2 later", "1 done, the rest later". */
export const seenToIn = (text: string): SeenTo | undefined => {
  const whole = wholeIn(plain(text));
  if (whole !== undefined) return { numbers: new Map(), rest: whole };
  const numbers = new Map<number, Answer>();
  let rest: Answer | null = null;
  for (const piece of text.split(/[,;.]\s+(?=\D|\d+ (?:is |are )?(?:later|done))|\s+but\s+/)) {
    const words = plain(piece);
    const others = REST.exec(words)?.[1];
    const found = others === undefined ? numbersIn(piece) : [];
    if (found === undefined) return undefined;
    if (others !== undefined) rest = others === "done" ? "done" : "later";
    for (const [line, answer] of found) numbers.set(line, answer);
  }
  return { numbers, rest };
};
