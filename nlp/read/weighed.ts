import type { Edtf } from "../../shared/record.ts";
import type { Outcome } from "../../shared/vocabulary.ts";
import type { Build } from "./build.ts";
import { costChoices, costSigns, paidFor } from "./cost-signs.ts";
import { dateChoices, dateScene, dateSigns } from "./date-signs.ts";
import { exposedOf, exposureChoices, exposureSigns } from "./exposure-signs.ts";
import { outcomeSigns } from "./field-signs.ts";
import { withoutGone } from "./gone-stuff.ts";
import type { Judges } from "./judges.ts";
import type { Made } from "./made.ts";
import { materialChoices, materialSigns, usedOf } from "./material-signs.ts";
import { deniesGood } from "./verdicts.ts";
import { whereChoices, whereSigns } from "./where-signs.ts";
import { startingIn } from "./windows.ts";

const MOST_SURE = 0.99;
const EVEN = 0.5;

const OPEN = { outcome: "untested" } as const;
/** Said in so many words not to be known, it takes as much as this to know better. */
const SURELY_OTHER = 0.8;
const isOpenSaid = ({ judged }: Made): boolean => judged?.outcome === "untested" && judged.spans.length > 0;

type Rated = { readonly outcome: Outcome; readonly sure: number };

/** "Isn't holding any more": good that is denied, and nothing else said of it, is bad, whatever the words are mostly said of. */
const denied = ({ span }: Made, rated: Rated, { scan }: Build): Rated => {
  const verdicts = startingIn(scan.verdicts, span.from, span.to);
  return rated.outcome === "holding" && verdicts.length > 0 && verdicts.every(deniesGood)
    ? { outcome: "failed", sure: EVEN }
    : rated;
};

/** How a piece of work or a look came out, all its words weighed. */
const withOutcome = (made: Made, next: Made | undefined, build: Build, judges: Judges): Made => {
  if (made.kind !== "repair" && made.kind !== "check") return made;
  const rated = judges.outcome(outcomeSigns(made, next, build), made);
  const { outcome, sure } =
    isOpenSaid(made) && rated.sure < SURELY_OTHER ? { ...OPEN, sure: EVEN } : denied(made, rated, build);
  const judged =
    outcome === (made.judged?.outcome ?? "untested")
      ? (made.judged ?? { outcome, spans: [], rule: "nothing-said" })
      : { outcome, spans: [], rule: "weighed" };
  return { ...made, judged, sure: { ...made.sure, outcome: Math.min(MOST_SURE, sure) } };
};

/** The materials that went in or on, of all that are named near a piece of work. */
const withMaterials = (
  made: Made,
  beside: readonly (Made | undefined)[],
  build: Build,
  judges: Judges,
): Made => {
  if (made.kind !== "repair" && made.kind !== "todo") return made;
  const choices = materialChoices(made, beside, build);
  const taken = choices.filter(
    (choice) =>
      judges.material(materialSigns(made, choice, choices, beside, build), made, choice, choices) >= EVEN,
  );
  const kept = withoutGone(taken, build);
  return { ...made, used: { ...usedOf(made.used, kept), gone: kept.length < taken.length } };
};

/** The use and time since a piece of work or a look, of all that is told near it. */
const withExposure = (
  made: Made,
  ruled: Made,
  next: Made | undefined,
  build: Build,
  judges: Judges,
): Made => {
  if (ruled.kind !== "repair" && ruled.kind !== "check") return made;
  const rated = exposureChoices(ruled, build).map((choice) => ({
    choice,
    sure: judges.exposure(exposureSigns(ruled, next, choice, build), ruled, choice),
  }));
  return {
    ...made,
    exposure: exposedOf(
      rated.filter(({ choice, sure }) => sure >= EVEN && sure > (build.ofRig.get(choice.at.from) ?? 0)),
    ),
  };
};

/** What "nowhere told" counts: missing a place that was told is worse than one too many. */
const NOWHERE = 0.5;

/** Where it is, of all the phrases of place near its name and its deed. */
const withWhere = (made: Made, build: Build, judges: Judges): Made => {
  const choices = whereChoices(made, build);
  if (choices.length === 1) return made;
  const parts = judges.where(
    choices.map((choice) => whereSigns(made, choice, choices, build)),
    made,
    choices,
  );
  const rated = choices.map(({ at }, nth) => (at === undefined ? NOWHERE : 1) * (parts[nth] ?? 0));
  const best = choices.reduce((top, _, at) => ((rated[at] ?? 0) > (rated[top] ?? 0) ? at : top), 0);
  const sure = Math.min(MOST_SURE, parts[best] ?? 0);
  return { ...made, where: choices[best]?.at, sure: { ...made.sure, where: sure } };
};

/** Of the dates that each record may have the likeliest; those within one choice of each other count together. */
const redated = (ruled: readonly Made[], judged: readonly Made[], build: Build, judges: Judges): Made[] => {
  const scene = dateScene(ruled, build);
  return ruled.map((each, at) => {
    const made = judged[at] ?? each;
    if (each.kind === "todo") return made;
    const choices = dateChoices(each, build);
    const parts = judges.date(
      choices.map((choice) => dateSigns(each, at, scene, choice, build)),
      each,
      choices,
    );
    const shareOf = (edtf: Edtf | null): number =>
      choices.reduce((sum, choice, i) => (choice.dated.edtf === edtf ? sum + (parts[i] ?? 0) : sum), 0);
    const best = choices.reduce((top, choice) =>
      shareOf(choice.dated.edtf) > shareOf(top.dated.edtf) ? choice : top,
    );
    const sure = Math.min(MOST_SURE, shareOf(best.dated.edtf));
    const kept = each.dated !== undefined && each.dated.edtf === best.dated.edtf;
    return { ...made, dated: kept ? each.dated : best.dated, sure: { ...made.sure, date: sure } };
  });
};

/** What each piece of work cost or is to cost, of all the sums told near it. */
const withPrices = (
  ruled: readonly Made[],
  judged: readonly Made[],
  build: Build,
  judges: Judges,
): readonly Made[] => {
  const rated = ruled.map((each, at) => {
    if (each.kind === "fault") return [];
    const choices = costChoices(each, build);
    return choices.map((choice) => ({
      choice,
      sure: judges.cost(costSigns(each, ruled[at + 1], choice, choices, build), each, choice),
    }));
  });
  const paid = paidFor(rated, EVEN);
  return judged.map((made, at) => {
    const sum = paid[at];
    return { ...made, cost: sum === undefined ? null : { value: sum.value, at: sum.at } };
  });
};

/** "Silicone peeled off already so I redid it with butyl": what let go is the old work, and the new was done just now. */
const doneOver = (made: Made, build: Build): Made =>
  made.used.gone === true && made.judged?.outcome === "failed"
    ? {
        ...made,
        judged: { outcome: "untested", spans: [], rule: "done-over" },
        dated: made.dated?.edtf == null ? { edtf: build.today, spans: [], rule: "just-now" } : made.dated,
      }
    : made;

/** Records by the rules, in the order of the note, with materials, outcomes and dates as the judges weigh them. */
export const weighed = (ruled: readonly Made[], build: Build, judges: Judges): Made[] => {
  const judged = ruled.map((each, at) => {
    const supplied = withMaterials(each, [ruled[at - 1], ruled[at + 1]], build, judges);
    const told = withOutcome(supplied, ruled[at + 1], build, judges);
    return withWhere(withExposure(told, each, ruled[at + 1], build, judges), build, judges);
  });
  return redated(ruled, withPrices(ruled, judged, build, judges), build, judges).map((made) =>
    doneOver(made, build),
  );
};
