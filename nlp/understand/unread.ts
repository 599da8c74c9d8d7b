import { Temporal } from "temporal-polyfill";
import type { Scene } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { thingsIn } from "./older.ts";

/** This soon after a note, words that put something right are said of it. */
const JUST_NOW = { minutes: 30 };
/** What was told this long before it is not meant by them. */
const LONG_AGO = { hours: 12 };

const isWithin = (at: string, moment: Moment, span: Temporal.DurationLike): boolean =>
  Temporal.Instant.compare(Temporal.Instant.from(at).add(span), Temporal.Instant.from(moment.said)) >= 0;

/**
 * The scene as a message sees it right after a note in which no work was found: "that was yesterday" is said of that note,
 * and of nothing told long before, unless it is named.
 */
export const sceneAfterUnread = (text: string, moment: Moment, scene: Scene): Scene => {
  const { unread, last, older } = scene;
  if (unread === null || scene.replyTo !== null || !isWithin(unread, moment, JUST_NOW)) return scene;
  if (last === null || isWithin(last.at, moment, LONG_AGO)) return scene;
  const things = new Set(thingsIn(text, moment));
  return { ...scene, last: null, older: older.filter(({ fields }) => things.has(fields.component)) };
};
