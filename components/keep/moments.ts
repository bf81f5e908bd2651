/** Times in the reader's own clock and language. */

/** An ISO time as a day and a time; the text itself where it is none. */
export function sayMoment(iso: string): string {
  const time = new Date(iso);
  if (Number.isNaN(time.getTime())) return iso === '' ? 'at a time not known' : iso;
  return time.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

/** Milliseconds since 1970, by the reader's clock. */
export function millisecondsNow(): number {
  return Date.now();
}

/** A moment as ISO 8601 in UTC, from milliseconds since 1970. */
export function isoOf(milliseconds: number): string {
  return new Date(milliseconds).toISOString();
}

/** Milliseconds in a day, and in a minute. */
const DAY = 86_400_000;
const MINUTE = 60_000;

/** Today as whole days since the first of January 1970 in the reader's own time. */
export function dayNow(): number {
  const now = new Date();
  return Math.floor((now.getTime() - now.getTimezoneOffset() * MINUTE) / DAY);
}
