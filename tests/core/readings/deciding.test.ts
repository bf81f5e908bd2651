/** The few readings of the front page: safe, right about jacks whose values are known, and of one mind with the finder. */
import { describe, expect, test } from 'vitest';
import {
  answerFinder,
  decidingReadings,
  likelyTypes,
  meterProfile,
  readJack,
  safeReadings,
} from '../../../src/core/readings/index.ts';
import type { Deciding, Reading } from '../../../src/core/readings/index.ts';
import { circuitsFor, makeJack, stylesFor } from '../../../src/core/wiring/index.ts';
import type { Direction } from '../../../src/core/wiring/index.ts';
import { jackEvidence } from '../../support/evidence.ts';

const SOCKET = 'trs-3.5';
const USUAL = meterProfile('usual');

/** A value with its unit, SI. */
function valueOf(words: string): number {
  const [number = '', unit = ''] = words.split(' ');
  const factor = { V: 1, ohm: 1, kohm: 1e3, Mohm: 1e6 }[unit];
  if (factor === undefined) throw new Error(`expected V or ohm, got '${words}'`);
  return Number(number.replace('−', '-')) * factor;
}

/** Whether what the meter shows is what the words of a display say. */
function fits(words: string, reading: Reading): boolean {
  return words.split(' or ').some((part) => {
    if (part === 'OL') return reading.shows === 'overload';
    if (reading.shows !== 'value') return false;
    if (part.startsWith('0 V ± ')) return Math.abs(reading.value) < valueOf(part.slice(6));
    if (part.startsWith('less than ')) return reading.value < valueOf(part.slice(10));
    if (part.startsWith('more than ')) return reading.value >= valueOf(part.slice(10));
    const [least = '', most = ''] = part.split(' to ');
    return reading.value >= valueOf(least) && reading.value < valueOf(most);
  });
}

function press({ readings }: Deciding, jack: ReturnType<typeof makeJack>) {
  return readings.map(({ at, displays }) => {
    const reading = readJack({ kind: 'control', jack }, at, USUAL);
    const number = displays.findIndex((words) => fits(words, reading));
    return { at, reading, number };
  });
}

describe.each(['out', 'in'] as const satisfies readonly Direction[])(
  'The readings for an %s',
  (direction) => {
    const types = stylesFor(direction, SOCKET);
    const canStreamClock = direction === 'out';
    const deciding = decidingReadings(direction, SOCKET, types, canStreamClock);
    const evidence = jackEvidence({ connector: SOCKET, marked: direction, canStreamClock });

    test('are among the safe ones, and three to five', () => {
      const safe = safeReadings(evidence);
      expect(deciding.readings.length).toBeGreaterThanOrEqual(3);
      expect(deciding.readings.length).toBeLessThanOrEqual(5);
      for (const { at } of deciding.readings) expect(safe).toContainEqual(at);
    });

    test('name no wrong type for any usual circuit, the most with three and nearly all with five, as the finder does', () => {
      let [jacks, three, five] = [0, 0, 0];
      for (const style of types)
        for (const circuit of circuitsFor(direction, style).filter((one) => one !== 'driver-off')) {
          const taken = press(deciding, makeJack(direction, SOCKET, style, { circuit }));
          const pressed = taken.map(({ number }) => (number < 0 ? undefined : number));
          const [afterThree] = likelyTypes(deciding, pressed.slice(0, 3));
          const [afterFive] = likelyTypes(deciding, pressed);
          jacks++;
          if (afterThree?.type === style) three++;
          if (afterFive?.type === style) five++;
          for (const top of [afterThree, afterFive])
            if (top && top.probability > 0.95) expect(top.type, `${style} ${circuit}`).toBe(style);
          const finder = answerFinder(
            evidence,
            taken.map(({ at, reading }) => ({ at, reading })),
          );
          if (finder.state === 'sure') expect(finder.rows[0]?.name).toBe(`${direction} ${afterFive?.type}`);
        }
      console.log(`${direction}: ${jacks} circuits, named ${three} after three readings, ${five} after five`);
      expect(three / jacks).toBeGreaterThanOrEqual(0.75);
      expect(five / jacks).toBeGreaterThanOrEqual(0.9);
    });

    test('are counted on the crowds of the finder: after three the likeliest is right for nine devices of ten', () => {
      let [right, wrong] = [0, 0];
      for (const { displays, shares } of deciding.shown) {
        const [top] = likelyTypes(deciding, displays.slice(0, 3));
        for (const [type, share] of Object.entries(shares)) {
          if (top?.type === type) right += share;
          else if (top && top.probability > 0.95) wrong += share;
        }
      }
      expect(right).toBeGreaterThan(0.9);
      // What is named above 95 % is wrong less often than once in twenty.
      expect(wrong).toBeLessThan(0.05);
    });

    test('leave all types open before one is taken', () => {
      const open = likelyTypes(deciding, []).flatMap(({ type }) => type ?? []);
      expect(new Set(open)).toEqual(new Set(types));
    });
  },
);

test('A list of one type needs no reading', () => {
  expect(decidingReadings('in', SOCKET, ['type-b'], false).readings).toEqual([]);
});
