import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { planSchema, readPlan, writePlanText } from '../../../src/core/plan/read-plan.ts';
import type { Problem } from '../../../src/core/plan/reading.ts';
import { seededRandom } from '../../support/random.ts';
import { PATIENCE, mutate, plainFile, randomPlan, randomTexts } from './plans.ts';

const accepts = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(planSchema());

/**
 * What a schema does not say: that names agree with one another, that a jack can be, that a contact is on its connector,
 * that a conductor stands once and that two contacts differ. Everything else it must refuse as the reader does.
 */
const BEYOND_A_SCHEMA =
  /a name used once|the name of a|a jack with direction|a jack that can be|a contact of|each conductor once|each input once|each lead once|at most \d+ (inputs|conductors)|two different contacts|as many as|the name of a jack of/;

const inReach = ({ expected }: Problem): boolean => !BEYOND_A_SCHEMA.test(expected);

describe('The published schema', { timeout: PATIENCE }, () => {
  test('accepts every plan that the reader writes', () => {
    for (let seed = 0; seed < 200; seed++) {
      const value: unknown = JSON.parse(writePlanText(randomPlan(seed)));
      expect(accepts(value), `seed ${seed}: ${JSON.stringify(accepts.errors)}`).toBe(true);
    }
  });

  test('accepts a file that leaves out what may be left out', () => {
    expect(accepts(plainFile()), JSON.stringify(accepts.errors)).toBe(true);
  });

  test('agrees with the reader on 6 000 changed files', () => {
    const random = seededRandom(7);
    const texts = randomTexts(60);
    let refused = 0;
    for (let round = 0; round < 6000; round++) {
      const value = mutate(JSON.parse(random.pick(texts)), random);
      const reading = readPlan(value);
      const wanted = reading.ok || !reading.problems.some(inReach);
      if (!wanted) refused++;
      if (accepts(value) !== wanted)
        throw new Error(`round ${round}: ${JSON.stringify(reading.ok ? accepts.errors : reading.problems)}`);
    }
    expect(refused).toBeGreaterThan(2000);
  });
});
