import { happeningsIn } from "../../nlp/understand/happenings.ts";
import { capital } from "../../shared/capital.ts";
import {
  CARE_ROWS,
  type CareRow,
  careAnswered,
  type Happening,
  happeningWords,
} from "../../shared/outlook/index.ts";
import { listed } from "../replies/words.ts";
import { keptChoices } from "../rig/care-choices.ts";
import { HAPPENED_KEY, keptHappenings } from "../rig/happened.ts";
import { momentOf } from "../rig/rig.ts";
import type { Told } from "./told.ts";
import type { Turn } from "./turn.ts";

/** What was told so long after has been looked at, or was no trouble. */
const STALE = { days: 45 };

const MOST_SAID = 3;

const rowsAfter = (what: Happening): readonly CareRow[] =>
  CARE_ROWS.filter((row) => row.afterEvents?.some(({ event }) => event === what));

/** The care that the work in the same note has seen to. */
const seenTo = (turn: Turn, { saved }: Told): ReadonlySet<CareRow["id"]> =>
  new Set(
    saved
      .flatMap(({ record }) => turn.store.history.record(record) ?? [])
      .flatMap((record) => careAnswered(record)),
  );

/** "The hail: time to go over the roof's seams, vents and skylight." Beside told work only for care that is on. */
const adviceOn = (turn: Turn, what: Happening, told: Told): string[] => {
  const on = new Set(keptChoices(turn.store).map(({ row }) => row));
  const done = seenTo(turn, told);
  const rows = rowsAfter(what)
    .filter(({ id }) => !done.has(id) && (told.saved.length === 0 || on.has(id)))
    .slice(0, MOST_SAID);
  if (rows.length === 0) return [];
  const asks = rows.some(({ id }) => on.has(id)) ? " I'll come back to it." : "";
  return [`${capital(happeningWords(what))}: time to ${listed(rows.map(({ say }) => say))}.${asks}`];
};

/** Notes what a note says has happened to the rig, so that care comes due, and says what it calls for. */
export const happenings = (turn: Turn, told: Told): string | undefined => {
  const since = turn.today.subtract(STALE).toString();
  const kept = keptHappenings(turn.store);
  const news = happeningsIn(told.note.text, momentOf(told.note.said, turn.rig)).filter(
    ({ what, day }) => day >= since && day > (kept[what] ?? ""),
  );
  if (news.length === 0) return undefined;
  const all = { ...kept, ...Object.fromEntries(news.map(({ what, day }) => [what, day])) };
  turn.keeper.setSetting(HAPPENED_KEY, JSON.stringify(all));
  const advice = news.flatMap(({ what }) => adviceOn(turn, what, told));
  return advice.length === 0 ? undefined : advice.join("\n");
};
