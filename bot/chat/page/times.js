// @ts-check

const clock = new Intl.DateTimeFormat(undefined, { hour: "numeric", minute: "2-digit" });
const weekday = new Intl.DateTimeFormat(undefined, { weekday: "long", day: "numeric", month: "long" });
const withYear = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "long", year: "numeric" });
const full = new Intl.DateTimeFormat(undefined, { dateStyle: "full", timeStyle: "short" });

/** @param {number} seconds since 1970 */
export const clockTime = (seconds) => clock.format(seconds * 1000);

/** @param {number} seconds since 1970 */
export const fullTime = (seconds) => full.format(seconds * 1000);

/** @param {number} seconds since 1970 */
export const dayKey = (seconds) => new Date(seconds * 1000).toDateString();

/** @param {number} seconds since 1970 @param {Date} now */
export const dayName = (seconds, now) => {
  const day = new Date(seconds * 1000);
  if (day.toDateString() === now.toDateString()) return "Today";
  const yesterday = new Date(now.getFullYear(), now.getMonth(), now.getDate() - 1);
  if (day.toDateString() === yesterday.toDateString()) return "Yesterday";
  return (day.getFullYear() === now.getFullYear() ? weekday : withYear).format(day);
};

/** Minutes and seconds. @param {number} seconds */
export const span = (seconds) =>
  `${Math.floor(seconds / 60)}:${String(Math.floor(seconds) % 60).padStart(2, "0")}`;

/** @param {number} bytes */
export const fileSize = (bytes) => {
  if (bytes < 1000) return `${bytes} bytes`;
  const kilobytes = bytes / 1000;
  return kilobytes < 1000 ? `${Math.round(kilobytes)} kB` : `${(kilobytes / 1000).toFixed(1)} MB`;
};
