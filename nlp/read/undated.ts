import type { Build } from "./build.ts";
import { factDate } from "./fact-dates.ts";
import { headingOver } from "./headings.ts";
import { isLongAgo } from "./long-ago.ts";
import type { Made } from "./made.ts";
import { sameTime } from "./same-time.ts";

/** Exposures that work done just now cannot have had yet; cycles may be a trial. */
const isSeasoned = ({ exposure }: Made): boolean => exposure.some(({ value }) => value.unit !== "cycles");

/** Tried before what is dated later: when the first try was, nobody said. */
const isEarlierTry = (each: Made, made: readonly Made[]): boolean =>
  each.judged?.outcome === "failed" &&
  made.some(
    (other) =>
      other.kind === "repair" &&
      other.dated !== undefined &&
      other.told.topic.component === each.told.topic.component &&
      other.span.from > each.span.from,
  );

const FEWEST = 3;
/** A note that looks back: what it leaves undated was not done today. */
const looksBack = (made: readonly Made[], today: string): boolean => {
  const dated = made.filter((each) => each.kind === "repair" && each.dated !== undefined);
  return dated.length >= FEWEST && dated.every((each) => each.dated?.edtf !== today);
};

/** Dates what its own words left undated: by what it is told along with, else as done just now or at no known time. */
export const withDates = (made: readonly Made[], build: Build): Made[] => {
  const retrospective = looksBack(made, build.today);
  const out: Made[] = [];
  for (const each of made) out.push(dated(each, out, made, retrospective, build));
  return out;
};

const dated = (
  each: Made,
  earlier: readonly Made[],
  made: readonly Made[],
  retrospective: boolean,
  build: Build,
): Made => {
  if (each.dated !== undefined || each.kind === "todo") return each;
  const found =
    each.event === null || each.kind === "fault" ? factDate(each, build) : sameTime(each, earlier, build);
  if (found !== undefined) return { ...each, dated: found };
  const heading = headingOver(each, build);
  if (heading !== undefined) return { ...each, dated: heading };
  if (each.kind !== "repair") return { ...each, dated: { edtf: build.today, spans: [], rule: "just-now" } };
  const unknown = isLongAgo(each, build)
    ? "long-ago"
    : isSeasoned(each)
      ? "used-since"
      : isEarlierTry(each, made)
        ? "earlier-try"
        : undefined;
  if (unknown !== undefined) return { ...each, dated: { edtf: null, spans: [], rule: unknown } };
  return retrospective ? each : { ...each, dated: { edtf: build.today, spans: [], rule: "just-now" } };
};
