/** Plans from files and addresses: what goes out comes back, and what cannot be opened is said by name. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { handKeeper, handWriter, readHand } from '../../../components/keep/in-hand.ts';
import { isoOf, millisecondsNow, sayMoment } from '../../../components/keep/moments.ts';
import { fieldOf, keepNote, keptNote, oneOf } from '../../../components/keep/notes.ts';
import { planFromHash, planFromText, planHash } from '../../../components/keep/plan-files.ts';
import { dropStored, stored, versions } from '../../../components/keep/shelf.ts';
import { demoBoard } from '../../../src/core/board/index.ts';
import {
  makePlan,
  planOfLink,
  readPlanText,
  sayProblems,
  writePlanText,
} from '../../../src/core/plan/index.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import { SmallStore } from '../../support/small-store.ts';

const LEAD = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));
const PLAN = planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'type-a'), [LEAD]);

beforeEach(() => void vi.stubGlobal('localStorage', new SmallStore()));
afterEach(() => void vi.unstubAllGlobals());

describe('A plan in an address', () => {
  test('comes back as it went, the demo board too', async () => {
    for (const plan of [PLAN, demoBoard()])
      expect(await planFromHash(await planHash(plan))).toEqual({ plan });
  });

  test('may be followed by words for the page', async () => {
    expect(await planFromHash(`${await planHash(PLAN)}&test`)).toEqual({ plan: PLAN });
  });

  test('is not looked for in an address of another kind', async () => {
    for (const hash of ['', '#', '#test', '#out-socket=din5']) expect(await planFromHash(hash)).toEqual({});
  });

  test('that is cut short, or holds nothing, is not opened, and the reader is told', async () => {
    const whole = await planHash(PLAN);
    const cut = await planFromHash(whole.slice(0, whole.length >> 1));
    expect(cut.plan).toBeUndefined();
    expect(cut.problem).toMatch(/^The plan in this link was not opened\. Why: .+\.$/);
    expect(await planFromHash(await planHash(makePlan({})))).toEqual({
      problem: 'The plan in this link was not opened. Why: it has no device and no lead.',
    });
  });
});

describe('A plan from a file', () => {
  test('is opened, or refused with the words of its reader', () => {
    expect(planFromText(writePlanText(PLAN), 'The file')).toEqual({ plan: PLAN });
    const reading = readPlanText('{}');
    expect(planFromText('{}', 'The file')).toEqual({
      problem: `The file was not opened. Why: ${reading.ok ? '' : sayProblems(reading.problems)}.`,
    });
  });
});

describe('What is in hand', () => {
  test('is nothing at first, and then what a page put there', () => {
    expect(readHand()).toEqual({});
    expect(handWriter()(PLAN)).toBeUndefined();
    expect(readHand()).toEqual({ plan: PLAN });
    expect(handKeeper().start(makePlan({}))).toEqual(PLAN);
  });

  test('of another page becomes a version; what the page itself wrote does not', () => {
    const other = { ...PLAN, title: 'from the bench' };
    handWriter()(other);
    const write = handWriter();
    write(PLAN);
    write({ ...PLAN, title: 'changed' });
    expect(versions('bench').list.map(({ text }) => text)).toEqual([writePlanText(other)]);
  });

  test('is not written again when it is the same', () => {
    const write = handWriter();
    write(PLAN);
    write(PLAN);
    expect(stored('bench').now?.revision).toBe(1);
  });

  test('that the browser does not take is said', () => {
    vi.stubGlobal('localStorage', new SmallStore(10));
    expect(handWriter()(PLAN)).toBe('no room');
  });

  test('that cannot be read is said, and names where it was', () => {
    localStorage.setItem('five-milliamps bench', 'kept 1 a b\nnothing');
    expect(readHand().problem).toMatch(/^What this browser has in hand was not opened\. Why: /);
  });
});

describe('Notes', () => {
  test('come back as they were, each under its name, until they are dropped', () => {
    expect(keepNote('one', { a: [1, null] })).toBeUndefined();
    keepNote('two', 'b');
    expect(keptNote('one')).toEqual({ a: [1, null] });
    dropStored('one');
    expect([keptNote('one'), keptNote('two')]).toEqual([undefined, 'b']);
  });

  test('that cannot be read are as if never kept', () => {
    localStorage.setItem('five-milliamps one', '{');
    expect(keptNote('one')).toBeUndefined();
  });

  test('do no harm where the browser refuses, and say what that means', () => {
    vi.stubGlobal('localStorage', undefined);
    expect(keepNote('one', 1)).toMatch(
      /^This browser keeps nothing for this page \(.+\): what you enter is gone/,
    );
    expect(keptNote('one')).toBeUndefined();
    expect(() => dropStored('one')).not.toThrow();
  });

  test('are read field by field, whatever they are', () => {
    expect(fieldOf({ a: 1 }, 'a')).toBe(1);
    for (const value of [undefined, null, 'a', 3]) expect(fieldOf(value, 'a')).toBeUndefined();
    expect(oneOf(['x', 'y'], 'y', 'x')).toBe('y');
    expect(oneOf(['x', 'y'], 'z', 'x')).toBe('x');
  });
});

describe('Moments', () => {
  test('are told in the words of the reader, and as they are where they are none', () => {
    expect(sayMoment('')).toBe('at a time not known');
    expect(sayMoment('yesterday')).toBe('yesterday');
    expect(sayMoment('2026-05-01T10:00:00.000Z')).toMatch(/2026|26/);
  });

  test('of the clock can be written and read again', () => {
    const now = millisecondsNow();
    expect(Date.parse(isoOf(now))).toBe(now);
  });
});
