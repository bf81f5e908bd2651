/** When and how a message arrives, in words. */
import type { Hearing } from './hearing.ts';

const MILLISECONDS = 1e3;
const MICROSECONDS = 1e6;

/** A time in milliseconds, as finely as it means something. */
export function sayMilliseconds(seconds: number): string {
  const ms = seconds * MILLISECONDS;
  return `${ms < 1 ? ms.toFixed(3) : ms < 100 ? ms.toFixed(2) : ms.toFixed(0)} ms`;
}

/** A delay on the way: microseconds where it is passed on at once, milliseconds where bytes are read and sent again. */
export function sayDelay(seconds: number): string {
  return seconds < 1 / MILLISECONDS
    ? `${(seconds * MICROSECONDS).toFixed(1)} µs`
    : `${(seconds * MILLISECONDS).toFixed(2)} ms`;
}

/** How the last device on the way gave a message on. */
export function sayPassedOn({ last }: Hearing): string {
  switch (last.by) {
    case 'own':
      return 'straight from the sender';
    case 'hardware':
      return `passed on at once by '${last.feed.from.device}'`;
    case 'software':
      return `read and sent again by '${last.feed.from.device}'`;
  }
}
