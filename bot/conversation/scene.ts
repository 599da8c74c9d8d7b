import { likelySpokenOf, speakingSigns } from "../../nlp/ask/spoken-of.ts";
import { LEARNT_TALK } from "../../nlp/judges/talk.ts";
import { OLDER, thingsIn } from "../../nlp/understand/older.ts";
import type { KeptRecord, KeptUsage } from "../../shared/history.ts";
import type { Query } from "../../shared/memory/query.ts";
import type { Scene, Showing, Shown } from "../../shared/memory/scene.ts";
import type { OutboxItem } from "../../store/outbox.ts";
import { momentOf } from "../rig/rig.ts";
import { pendingIn } from "./pending.ts";
import type { ToldNote } from "./told.ts";
import type { Turn } from "./turn.ts";

/** After this long a short question stands on its own again. */
const FRESH_MINUTES = 15;

const shownOf = ({ store }: Turn, { id, fields, noteId }: KeptRecord): Shown => ({
  id,
  fields,
  words: store.history.note(noteId)?.text ?? "",
});

const showingOf = (turn: Turn, item: OutboxItem | undefined): Showing | null => {
  if (item === undefined || item.shows.of === null) return null;
  const { history } = turn.store;
  const records = item.shows.records.flatMap((id) => history.record(id) ?? []);
  return {
    at: item.at,
    of: item.shows.of,
    records: records.map((record) => shownOf(turn, record)),
    usage: item.shows.usage.flatMap((id): KeptUsage[] => {
      const entry = history.use(id);
      return entry === undefined ? [] : [entry];
    }),
  };
};

const minutesSince = (turn: Turn, { at }: OutboxItem): number =>
  (turn.now.epochMilliseconds - Date.parse(at)) / 60_000;

const isFresh = (turn: Turn, item: OutboxItem): boolean => minutesSince(turn, item) < FRESH_MINUTES;

const askedIn = (item: OutboxItem | undefined): Query | null =>
  item?.shows.asked == null ? null : (item.shows.asked as Query);

/** The records told of at any time that a message may be about: those that it names, and so many of the latest. */
const olderFor = (turn: Turn, note: ToldNote, latest: number): readonly Shown[] => {
  const { history } = turn.store;
  const named = thingsIn(note.text, momentOf(note.said, turn.rig)).flatMap((component) =>
    history.records({ components: [component], limit: OLDER.ofThing }),
  );
  const known = new Map([...history.records({ limit: latest }), ...named].map((each) => [each.id, each]));
  return [...known.values()].map((record) => shownOf(turn, record));
};

/** As many records of each thing that a message seems to speak of. */
const OF_SPOKEN = 3;

/** The latest records of the things that a message seems to speak of. */
const spokenOf = ({ store: { history } }: Turn, text: string): readonly KeptRecord[] =>
  likelySpokenOf(LEARNT_TALK.spoken(speakingSigns(text))).flatMap((component) =>
    history.records({ components: [component], limit: OF_SPOKEN }),
  );

/** This soon after a note, words that put something right are said of it. */
const JUST_NOW_MINUTES = 30;
/** What was told this long before it is not meant by them. */
const LONG_AGO_MINUTES = 12 * 60;

/** Right after a note in which nothing was found, "that was yesterday" is said of that, and of nothing told long before. */
const isPassedOver = (turn: Turn, told: OutboxItem | undefined): boolean => {
  const newest = turn.store.outbox.lastTold(turn.chat.channel, turn.chat.chatId);
  return (
    newest?.shows.of === null &&
    minutesSince(turn, newest) <= JUST_NOW_MINUTES &&
    (told === undefined || minutesSince(turn, told) > LONG_AGO_MINUTES)
  );
};

/** What this chat has just seen, and what it may be about, for understanding what a short message means here. */
export const sceneOf = (turn: Turn, note: ToldNote, replyTo: number | null): Scene => {
  const { outbox } = turn.store;
  const { channel, chatId } = turn.chat;
  const shown = outbox.lastShown(channel, chatId);
  const told = outbox.lastShown(channel, chatId, "note");
  const answer = outbox.lastShown(channel, chatId, "answer");
  const passedOver = isPassedOver(turn, told);
  const asked = answer !== undefined && answer.id > (told?.id ?? 0) ? answer : undefined;
  return {
    last: passedOver ? null : showingOf(turn, told),
    shown: passedOver && shown?.id === told?.id ? null : showingOf(turn, shown),
    replyTo: replyTo === null ? null : showingOf(turn, repliedTo(turn, replyTo)),
    older: olderFor(turn, note, passedOver ? 0 : OLDER.latest),
    spokenOf: spokenOf(turn, note.text).map((record) => shownOf(turn, record)),
    pending: pendingIn(turn),
    asked: asked !== undefined && isFresh(turn, asked) ? askedIn(asked) : null,
    askedEarlier: askedIn(asked),
  };
};

/** A reply may be to a message of ours, or to the person's own note. */
const repliedTo = (turn: Turn, messageId: number): OutboxItem | undefined => {
  const { channel, chatId } = turn.chat;
  const ours = turn.store.outbox.shownBy(channel, chatId, messageId);
  if (ours !== undefined) return ours;
  const note = turn.store.notes.ofMessage(channel, chatId, messageId);
  return note === undefined ? undefined : turn.store.outbox.aboutNote(note.id);
};
