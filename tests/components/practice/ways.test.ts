/** Two ways through the lessons, as the pages bring them before the reader's record is looked at. */
import { beforeEach, describe, expect, test } from 'vitest';
import LessonList from '../../../components/practice/LessonList.svelte';
import LessonPlace from '../../../components/practice/LessonPlace.svelte';
import NextLesson from '../../../components/practice/NextLesson.svelte';
import Resume from '../../../components/practice/Resume.svelte';
import {
  keepWay,
  keptWay,
  onWay,
  placeOn,
  sayMinutes,
  wayOfHash,
} from '../../../components/practice/ways.ts';
import { allOf, htmlOf, wordsOf } from '../../support/rendered.ts';
import { dropStored } from '../../../components/keep/shelf.ts';

const lesson = (number: number, title: string, minutes: number, player: boolean) => ({
  name: title.toLowerCase(),
  title,
  summary: `All of ${title}.`,
  number,
  address: `/lessons/${title.toLowerCase()}/`,
  minutes,
  player,
  tasks: true,
});
const LESSONS = [
  lesson(1, 'Loop', 20, true),
  lesson(2, 'Bits', 15, false),
  lesson(3, 'Solder', 15, true),
  lesson(4, 'Chain', 70, false),
];

describe('A way', () => {
  test('of a player leaves out what is not on it, and keeps the order', () => {
    expect(onWay(LESSONS, 'player').map(({ number }) => number)).toEqual([1, 3]);
    expect(onWay(LESSONS, 'all')).toBe(LESSONS);
  });

  test('gives a lesson its place among those that are on it, and none where it leaves it out', () => {
    expect(LESSONS.map(({ name }) => placeOn(LESSONS, 'all', name))).toEqual([
      '1 of 4',
      '2 of 4',
      '3 of 4',
      '4 of 4',
    ]);
    expect(LESSONS.map(({ name }) => placeOn(LESSONS, 'player', name))).toEqual([
      '1 of 2',
      undefined,
      '2 of 2',
      undefined,
    ]);
  });

  test('is named by an address, and by nothing else', () => {
    expect(['#player', '#all', '#players', 'player', ''].map(wayOfHash)).toEqual([
      'player',
      'all',
      undefined,
      undefined,
      undefined,
    ]);
  });

  test('takes so many minutes, and hours to the next half', () => {
    // 75 minutes are 1.25 hours, which rounds up to 1.5; 74 round down.
    expect([15, 55, 60, 74, 75, 140, 270].map(sayMinutes)).toEqual([
      'about 15 minutes',
      'about 55 minutes',
      'about 1 hour',
      'about 1 hour',
      'about 1.5 hours',
      'about 2.5 hours',
      'about 4.5 hours',
    ]);
  });
});

describe('A browser without a store', () => {
  beforeEach(() => dropStored('way'));

  test('goes on with every lesson, whatever was chosen', () => {
    expect(() => keepWay('player')).not.toThrow();
    expect(keptWay()).toBe('all');
  });
});

describe('The list of lessons', () => {
  const html = htmlOf(LessonList, { lessons: LESSONS });

  test('offers both ways with their count and their time', () => {
    expect(allOf(html, 'label')).toEqual([
      expect.stringMatching(/^Player ?: 2 lessons, about 35 minutes: /),
      expect.stringMatching(/^Builder or student ?: 4 lessons, about 2 hours: /),
    ]);
  });

  test('shows every lesson with its time where nobody has chosen, and calls none done', () => {
    expect(allOf(html, 'h2')).toEqual(['Loop', 'Bits', 'Solder', 'Chain']);
    expect(wordsOf(html)).toContain('Lesson 2 of 4, about 15 minutes Bits All of Bits.');
    expect(html).not.toContain('Done');
  });

  test('says nothing of going on to a reader who is new', () => {
    expect(wordsOf(htmlOf(Resume, { lessons: LESSONS, way: 'all', progress: undefined }))).toBe('');
  });

  test('names what is done, and what to go on with, by the way that is gone', () => {
    const progress = { done: ['loop'], due: 3 };
    const told = (way: 'all' | 'player'): string =>
      wordsOf(htmlOf(Resume, { lessons: LESSONS, way, progress }));
    expect(told('all')).toBe('Done: Loop. Go on with lesson 2 of 4: Bits . 3 due today: practise');
    expect(told('player')).toContain('Go on with lesson 2 of 2: Solder .');
    expect(
      wordsOf(
        htmlOf(Resume, {
          lessons: LESSONS,
          way: 'player',
          progress: { ...progress, done: ['loop', 'solder'] },
        }),
      ),
    ).not.toContain('Go on');
  });
});

describe('The head of a lesson', () => {
  test('tells its place and its time before it is known which way the reader goes', () => {
    const head = (player: string | undefined): string =>
      wordsOf(htmlOf(LessonPlace, { places: { all: '5 of 16', player }, minutes: 15 }));
    expect(head('4 of 8')).toBe('Lesson 5 of 16, about 15 minutes');
    expect(head(undefined)).toBe('Lesson 5 of 16, about 15 minutes');
  });
});

describe('The end of a lesson', () => {
  const link = (title: string, place: string) => ({ title, address: `/lessons/${title}/`, place });

  test('names the next one of both ways where they differ, and one where they do not', () => {
    const ways = {
      all: { before: link('a', '1 of 5'), after: link('c', '3 of 5') },
      player: { before: link('a', '1 of 3'), after: link('d', '3 of 3') },
    };
    expect(allOf(htmlOf(NextLesson, { ways }), 'a')).toEqual([
      'Before, 1 of 5: a',
      'Next, 3 of 5: c',
      'Next for players, 3 of 3: d',
      'All lessons',
    ]);
    const after = link('c', '3 of 5');
    const same = { all: { after }, player: { after } };
    expect(allOf(htmlOf(NextLesson, { ways: same }), 'a')).toEqual(['Next, 3 of 5: c', 'All lessons']);
  });
});
