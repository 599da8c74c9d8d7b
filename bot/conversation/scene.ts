import type { KeptUsage } from "../../shared/history.ts";
import type { Query } from "../../shared/memory/query.ts";
import type { Scene, Showing } from "../../shared/memory/scene.ts";
import type { OutboxItem } from "../../store/outbox.ts";
import { pendingIn } from "./pending.ts";
import type { Turn } from "./turn.ts";

/** After this long a short question stands on its own again. */
const FRESH_MINUTES = 15;

const showingOf = (turn: Turn, item: OutboxItem | undefined): Showing | null => {
  if (item === undefined || item.shows.of === null) return null;
  const { history } = turn.store;
  const records = item.shows.records.flatMap((id) => history.record(id) ?? []);
  return {
    at: item.at,
    of: item.shows.of,
    records: records.map(({ id, fields }) => ({ id, fields })),
    usage: item.shows.usage.flatMap((id): KeptUsage[] => {
      const entry = history.use(id);
      return entry === undefined ? [] : [entry];
    }),
  };
};

const isFresh = (turn: Turn, item: OutboxItem): boolean =>
  turn.now.epochMilliseconds - Date.parse(item.at) < FRESH_MINUTES * 60_000;

const askedIn = (item: OutboxItem | undefined): Query | null =>
  item?.shows.asked == null ? null : (item.shows.asked as Query);

/** What this chat has just seen, for understanding what a short message means here. */
export const sceneOf = (turn: Turn, replyTo: number | null): Scene => {
  const { outbox } = turn.store;
  const { channel, chatId } = turn.chat;
  const shown = outbox.lastShown(channel, chatId);
  const note = outbox.lastShown(channel, chatId, "note");
  const answer = outbox.lastShown(channel, chatId, "answer");
  const asked = answer !== undefined && answer.id > (note?.id ?? 0) ? answer : undefined;
  return {
    last: showingOf(turn, note),
    shown: showingOf(turn, shown),
    replyTo: replyTo === null ? null : showingOf(turn, repliedTo(turn, replyTo)),
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
