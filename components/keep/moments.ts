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
