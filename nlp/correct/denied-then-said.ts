import type { Moment } from "../../shared/reading.ts";
import { type Scan, type Stretch, scan } from "../read/scan.ts";

const DENIED =
  /^(?:it |that |they |those )?(?:wasn't|wasnt|was not|weren't|werent|isn't|isnt|not) ((?:[\w-]+ ){1,5}[\w-]+)[.!]*$/i;
/** "Silicone sealant": what sort of stuff it is, and no other stuff. */
const SORTS =
  /^(?:tape|sealant|sealer|caulk|grease|oil|glue|cement|paint|primer|cleaner|spray|adhesive|filler|foam|resin|putty|patch|cloth|wax|lube|wire|screw|bolt|washer|rivet|pipe|hose|fitting)s?$/i;
/** Only what is named matters here, and not when. */
const ANY_TIME: Moment = { said: "2025-06-15T12:00:00Z", zone: "UTC", hemisphere: "north" };

const VALUES: readonly ((found: Scan) => readonly Stretch[])[] = [
  ({ materials }) => materials.filter(({ group }) => group !== null),
  ({ times }) => times,
  ({ components }) => components,
];

const isWhole = ({ from, to }: Stretch, { tokens }: Scan): boolean => from === 0 && to === tokens.length;

/** Both are one value of the same sort, and nothing else. */
const areAlike = (one: string, other: string): boolean => {
  const [a, b] = [scan(one, ANY_TIME), scan(other, ANY_TIME)];
  return VALUES.some(
    (of) => of(a).some((each) => isWhole(each, a)) && of(b).some((each) => isWhole(each, b)),
  );
};

const DENIED_FIRST =
  /^(?:no,? )?(?:it |that |they |those )?(?:wasn't|wasnt|was not|weren't|werent|were not|isn't|isnt|is not|not) (?:in |on |the |at )?([^,;.:]{2,40})[,;.:] (.{2,60})$/i;

/** "It was not last month, they made it in january": what is denied, and the one value of its sort that is told instead. */
const toldInstead = (text: string): string | undefined => {
  const [, wrong = "", rest = ""] = DENIED_FIRST.exec(text) ?? [];
  const [denied, told] = [scan(wrong, ANY_TIME), scan(rest, ANY_TIME)];
  for (const of of VALUES) {
    const [right, ...more] = of(told);
    if (right === undefined || more.length > 0) continue;
    if (!of(denied).some((each) => isWhole(each, denied))) continue;
    const [from, to] = [told.tokens[right.from]?.start ?? 0, told.tokens[right.to - 1]?.end ?? 0];
    return `no, it was ${rest.slice(from, to)} not ${wrong}`;
  }
  return undefined;
};

/** "Wasn't silicone butyl tape": what it wasn't and what it was, with no mark between them or in a sentence of its own; in a plainer form. */
export const deniedThenSaid = (text: string): string | undefined => {
  const words = DENIED.exec(text)?.[1]?.split(" ") ?? [];
  const cuts = words.slice(1).map((_, at) => [words.slice(0, at + 1), words.slice(at + 1)] as const);
  const found = cuts
    .map(([wrong, right]) => [wrong.join(" "), right.join(" ")] as const)
    .find(([wrong, right]) => !SORTS.test(right) && areAlike(wrong, right));
  return found === undefined ? toldInstead(text) : `no, it was ${found[1]} not ${found[0]}`;
};
