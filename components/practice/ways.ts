/** The two ways through the lessons, and the one that the reader is on. */
import { keepNote, keptNote, oneOf } from '../keep/notes.ts';

const WAYS = ['all', 'player'] as const;
/** 'player': what leads to a lead that works; 'all': every lesson, for who builds or studies. */
export type Way = (typeof WAYS)[number];

/** A lesson as it stands in a list. */
export interface ListedLesson {
  readonly name: string;
  readonly title: string;
  readonly summary: string;
  readonly address: string;
  readonly minutes: number;
  /** Whether it is on the player's way. */
  readonly player: boolean;
  /** Whether it has tasks, so that it can be done. */
  readonly tasks: boolean;
}

const NAME = 'way';

/** The way that the reader has chosen; every lesson where none was. */
export const keptWay = (): Way => oneOf(WAYS, keptNote(NAME), 'all');

/** Keep a way; where the browser keeps nothing, the page goes on all the same. */
export const keepWay = (way: Way): void => void keepNote(NAME, way);

/** The way that an address names ('#player'), or undefined. */
export const wayOfHash = (hash: string): Way | undefined => WAYS.find((way) => hash === `#${way}`);

/** The lessons of a way, in order. */
export function onWay<T extends { readonly player: boolean }>(lessons: readonly T[], way: Way): readonly T[] {
  return way === 'player' ? lessons.filter(({ player }) => player) : lessons;
}

/** Where a lesson stands on a way, '3 of 8'; undefined where that way leaves it out. */
export function placeOn(
  lessons: readonly Pick<ListedLesson, 'name' | 'player'>[],
  way: Way,
  lesson: string,
): string | undefined {
  const own = onWay(lessons, way);
  const at = own.findIndex(({ name }) => name === lesson);
  return at < 0 ? undefined : `${at + 1} of ${own.length}`;
}

/** Minutes of several lessons in words: 'about 20 minutes', 'about 2.5 hours'; hours to the next half. */
export function sayMinutes(minutes: number): string {
  if (minutes < 60) return `about ${minutes} minutes`;
  const hours = Math.round(minutes / 30) / 2;
  return `about ${hours} ${hours === 1 ? 'hour' : 'hours'}`;
}
