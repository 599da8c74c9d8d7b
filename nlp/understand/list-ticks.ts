import { plain } from "../correct/pieces.ts";

/** Lines of a numbered list that are said to be seen to, or not. */
export type ListTicks = {
  /** From 1; "all" for every line. */
  readonly lines: readonly number[] | "all";
  readonly done: boolean;
  /** Bare numbers and "all done" mean the list only where it was shown last. */
  readonly plain: boolean;
};

const WORDS = [
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];
const ORDINALS = [
  "first",
  "second",
  "third",
  "fourth",
  "fifth",
  "sixth",
  "seventh",
  "eighth",
  "ninth",
  "tenth",
  "eleventh",
  "twelfth",
];

const ONE = `(?:\\d{1,2}|${WORDS.join("|")}|(?:the )?(?:${ORDINALS.join("|")})(?: one)?)`;
const MANY = `${ONE}(?: (?:(?:and|or|also|plus|to|through|thru|till|number|no) )?${ONE})*`;
const LEAD = "(?:(?:please|ok|okay|i|we|ive|weve|just|have|got|can you) )*";
const NAMED = "(?:(?:number|numbers|nr|no|item|items|line|lines|box|boxes) )?";
const STATE =
  "(?:all )?(?:done|ticked(?: off)?|off(?: the list)?|sorted|finished|seen to|taken care of|fixed|bought|checked(?: off)?|complete)";
const END = "(?: (?:now|too|already|as well|please|today))*";

const TICK = new RegExp(
  `^${LEAD}(?:(?:tick|check|cross|mark)(?:ed)?(?: off)?|did|done(?: with)?|finished(?: with)?|sorted|seen to) ${NAMED}(${MANY})(?: (?:off|as done|done))?${END}$`,
);
const IS_DONE = new RegExp(
  `^${LEAD}${NAMED}(${MANY})s? (?:(?:is|are|was|were|has been|have been) )?${STATE}${END}$`,
);
const UNTICK = new RegExp(
  `^${LEAD}(?:(?:untick|uncheck|unmark|reopen)(?:ed)?|not done(?: with)?|havent done|didnt do) ${NAMED}(${MANY})${END}$`,
);
const NOT_DONE = new RegExp(
  `^${NAMED}(${MANY}) (?:isnt|is not|arent|are not|wasnt|not) ${STATE}(?: yet)?(?: after all)?$`,
);
const BARE = new RegExp(`^${NAMED}(${MANY})$`);
const ALL =
  /^(?:(?:please|ok|and|so|well|we|ive|weve|i) )*(?:tick (?:(?:off )?(?:everything|all(?: of (?:it|them))?)|(?:them|it) all)(?: off)?|(?:its |thats |they are |theyre )?all (?:done|ticked|sorted|seen to|finished)|everything(?:s| is| has been)? (?:done|ticked(?: off)?|sorted|seen to|finished)|all of (?:it|them)(?:s| is| are)? done|did (?:it all|them all|everything|all of (?:it|them)))(?: now| already)?$/;

const RANGE = new RegExp(`(${ONE}) (?:to|through|thru|till) (${ONE})`, "g");
const EACH = new RegExp(ONE, "g");

const numberOf = (word: string): number => {
  const bare = word.replace(/^the | one$/g, "");
  const at = Math.max(WORDS.indexOf(bare), ORDINALS.indexOf(bare));
  return at >= 0 ? at + 1 : Number(bare);
};

const between = (from: number, to: number): number[] =>
  to < from ? [from, to] : Array.from({ length: to - from + 1 }, (_, step) => from + step);

const linesIn = (said: string): readonly number[] => {
  const lines = new Set<number>();
  const rest = said.replace(RANGE, (_, from: string, to: string) => {
    for (const line of between(numberOf(from), numberOf(to))) lines.add(line);
    return " ";
  });
  for (const [word] of rest.matchAll(EACH)) lines.add(numberOf(word));
  return [...lines].toSorted((a, b) => a - b);
};

const FORMS: readonly { readonly when: RegExp; readonly done: boolean; readonly plain: boolean }[] = [
  { when: UNTICK, done: false, plain: false },
  { when: NOT_DONE, done: false, plain: false },
  { when: TICK, done: true, plain: false },
  { when: IS_DONE, done: true, plain: false },
  { when: BARE, done: true, plain: true },
];

/** "Tick 2", "1 and 3 are done", "number four's sorted", "untick 2", "all done". */
export const listTicksIn = (text: string): ListTicks | undefined => {
  const said = plain(text.replace(/(\d)\s*[-–]\s*(\d)/g, "$1 to $2"))
    .replace(/[,.]/g, " ")
    .replace(/ +/g, " ");
  if (ALL.test(said)) return { lines: "all", done: true, plain: true };
  for (const { when, done, plain } of FORMS) {
    const lines = when.exec(said)?.[1];
    if (lines !== undefined) return { lines: linesIn(lines), done, plain };
  }
  return undefined;
};
