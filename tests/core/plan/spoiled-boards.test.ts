import { describe, expect, test } from 'vitest';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { Plan } from '../../../src/core/plan/plan.ts';
import { sayProblem } from '../../../src/core/plan/reading.ts';
import { readPlanText, sayProblems, writePlanText } from '../../../src/core/plan/read-plan.ts';
import { readSharedLink, writeSharedLink } from '../../../src/core/plan/shared-link.ts';
import { seededRandom } from '../../support/random.ts';
import { randomBoard, wiredBoard } from '../board/boards.ts';
import { PATIENCE, mutate, randomPlan } from './plans.ts';

/** Boards with everything a plan can hold: stock, hubs, prices, wishes, a press; wired ones, bare ones, and random ones. */
const BOARDS: readonly Plan[] = [
  makePlan({}),
  wiredBoard(8),
  wiredBoard(20),
  { ...randomBoard(3, 12), wishes: { noHub: false, noSoldering: true, mostHops: 3, spareOutlets: 1 } },
  ...[1, 3, 5].map(randomPlan),
];

/** Files and links: 10 000 together. */
const FILES = 6000;
const LINKS = 4000;

/** A place, what was expected there, and what came. */
const NAMED = /^[^\s:][^:]*: expected .+, got .+$/s;

describe('Ten thousand spoiled boards', { timeout: PATIENCE }, () => {
  test('as files open to a whole plan or to messages that each name a place', () => {
    const random = seededRandom(2026);
    const texts = BOARDS.map(writePlanText);
    let refused = 0;
    for (let round = 0; round < FILES; round++) {
      const whole = random.pick(texts);
      let spoiled: string;
      if (random.chance(0.25)) {
        const at = random.integer(0, whole.length - 1);
        spoiled = random.chance(0.5) ? whole.slice(0, at) : `${whole.slice(0, at)}}${whole.slice(at + 1)}`;
      } else {
        let value: unknown = JSON.parse(whole);
        for (let change = random.integer(1, 3); change > 0; change--) value = mutate(value, random);
        spoiled = JSON.stringify(value);
      }
      const reading = readPlanText(spoiled);
      if (reading.ok) {
        // What opens is whole: it can be written and read again.
        if (round % 50 === 0) expect(readPlanText(writePlanText(reading.plan))).toEqual(reading);
        continue;
      }
      refused++;
      expect(sayProblems(reading.problems)).not.toBe('');
      const silent = reading.problems.map(sayProblem).find((one) => !NAMED.test(one));
      if (silent !== undefined) throw new Error(`round ${round}: ${silent}`);
    }
    expect(refused).toBeGreaterThan(FILES / 2);
  });

  test('as links open to a whole plan or to messages that each name a place', async () => {
    const random = seededRandom(2027);
    const alphabet = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_=%'];
    const links = await Promise.all(BOARDS.map(writeSharedLink));
    let refused = 0;
    for (let round = 0; round < LINKS; round++) {
      const whole = random.pick(links);
      const at = random.integer(0, whole.length - 1);
      const spoiled = random.chance(0.3)
        ? whole.slice(0, at)
        : whole.slice(0, at) + random.pick(alphabet) + whole.slice(at + 1);
      const reading = await readSharedLink(spoiled);
      if (reading.ok) continue;
      refused++;
      const silent = reading.problems.map(sayProblem).find((one) => !NAMED.test(one));
      if (silent !== undefined) throw new Error(`round ${round}: ${silent}`);
    }
    expect(refused).toBeGreaterThan(LINKS / 2);
  });
});
