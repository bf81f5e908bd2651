/** What the front page was told: kept in the address, read with the manual's words, and turned into jacks for the core. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  NOTHING_TOLD,
  problemsInAddress,
  readTold,
  saysFor,
  tellJacks,
  toldJack,
  writeTold,
} from '../../../components/answer/told.ts';
import type { JackEntry, Told } from '../../../components/answer/told.ts';
import { drawAnswer, gradeOf, sayDrawing, workOfAnswer } from '../../../components/answer/work.ts';
import { verdictOf } from '../../../components/bench/work.ts';
import { SOCKETS, willTheyTalk, readManual } from '../../../src/core/answer/index.ts';
import type { ToldJack } from '../../../src/core/answer/index.ts';
import { edited } from '../../../src/core/plan/index.ts';
import { DRAWER, makeJack } from '../../../src/core/wiring/index.ts';

const UNTOLD = NOTHING_TOLD.out;
const entry = (changes: Partial<JackEntry>): JackEntry => ({ ...UNTOLD, ...changes });

beforeEach(() => void vi.stubGlobal('location', { pathname: '/' }));
afterEach(() => void vi.unstubAllGlobals());

describe('The address', () => {
  test('gives back everything that can be told of each jack', () => {
    for (const socket of SOCKETS)
      for (const says of saysFor('in', socket)) {
        const told: Told = {
          out: entry({ socket: 'din5' }),
          in: entry({ socket, says, words: says === 'words' ? 'tip = source & ring = sink' : '' }),
          drawer: DRAWER.slice(0, 2).map(({ id }) => id),
        };
        expect(readTold(writeTold(told)), `${socket} ${says}`).toEqual(told);
      }
  });

  test('is the page alone while nothing is told, and tells nothing then', () => {
    expect(writeTold(NOTHING_TOLD)).toBe('/');
    for (const hash of ['', '#', '#plan=abc']) expect(readTold(hash)).toBeUndefined();
  });

  test('passes over what cannot be', () => {
    expect(readTold('#out-socket=din5&out-says=type-a&in-socket=usb&drawer=nothing')).toEqual({
      ...NOTHING_TOLD,
      out: entry({ socket: 'din5' }),
    });
  });

  test('says of each field that cannot be what was expected and what came', () => {
    expect(
      problemsInAddress(
        '#out-socket=hat&in-socket=trs-3.5&in-says=type-z&in-circuit=steam&in-part=4N99&drawer=spoon+din',
      ),
    ).toEqual([
      "Jack on the sender: expected one of din5, trs-6.35, trs-3.5, trs-2.5, got 'hat'",
      expect.stringMatching(/^Manual of the listener: expected one of type-a, .*words, got 'type-z'$/),
      expect.stringMatching(/^Circuit of the listener: expected one of .*, got 'steam'$/),
      expect.stringMatching(/^Optocoupler of the listener: expected one of .*, got '4N99'$/),
      expect.stringMatching(/^Drawer: expected one of .*, got 'spoon'$/),
    ]);
    const long = `#in-socket=trs-3.5&in-says=words&in-words=${'x'.repeat(2001)}`;
    expect(problemsInAddress(long)).toEqual([
      'Words of the manual: expected at most 2000 characters, got 2001',
    ]);
  });

  test('has no problem while it says nothing of this page, or only what can be', () => {
    for (const hash of ['', '#', '#learn', '#plan=abc', '#out-socket=din5&in-socket=trs-3.5&in-says=type-a'])
      expect(problemsInAddress(hash)).toEqual([]);
  });

  test('cuts a manual that somebody pasted whole', () => {
    const told = {
      ...NOTHING_TOLD,
      in: entry({ socket: 'trs-3.5', says: 'words', words: 'x'.repeat(9000) }),
    };
    expect(readTold(writeTold(told))?.in.words).toHaveLength(2000);
  });
});

describe('A jack for the core', () => {
  test('is not there before enough was told, and a DIN jack needs no manual', () => {
    expect(toldJack(UNTOLD, 'in')).toBeUndefined();
    expect(toldJack(entry({ socket: 'trs-3.5' }), 'in')).toBeUndefined();
    expect(toldJack(entry({ socket: 'trs-3.5', says: 'words', words: ' ' }), 'in')).toBeUndefined();
    expect(toldJack(entry({ socket: 'din5' }), 'out')).toMatchObject({ direction: 'out', type: 'din' });
  });

  test('that receives and sends is open in which contact does what, and keeps that it is shared', () => {
    const shared = { could: ['tip-signal', 'ring-signal'], inAndOut: true };
    expect(toldJack(entry({ socket: 'trs-3.5', says: 'in-and-out' }), 'in')).toMatchObject(shared);
    const words = entry({ socket: 'trs-3.5', says: 'words', words: 'MIDI in and out on one jack' });
    expect(toldJack(words, 'in')).toMatchObject(shared);
    const told = entry({ socket: 'trs-3.5', says: 'words', words: 'tip = MIDI in, ring = MIDI out' });
    expect(toldJack(told, 'in')).toMatchObject({ type: 'tip-signal', inAndOut: true });
    expect(toldJack(told, 'out')).toMatchObject({ type: 'ring-signal', inAndOut: true });
    expect(saysFor('in', 'din5')).not.toContain('in-and-out');
  });

  test('has the type that its manual names, in its own words as well', () => {
    const words = 'TRS Type B';
    expect(readManual(words, 'in').type).toBe('type-b');
    expect(toldJack(entry({ socket: 'trs-3.5', says: 'words', words }), 'in')).toMatchObject({
      type: 'type-b',
    });
    expect(toldJack(entry({ socket: 'trs-3.5', says: 'type-a' }), 'in')).toMatchObject({ type: 'type-a' });
  });

  test('has no type where the manual says nothing of it', () => {
    const jack = toldJack(entry({ socket: 'trs-3.5', says: 'nothing' }), 'in');
    expect([jack?.socket, jack?.type]).toEqual(['trs-3.5', undefined]);
  });

  test('in hand is told as if it had been pressed, where the page shows its kind', () => {
    const told = tellJacks(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'type-b'));
    expect(told?.in).toEqual(entry({ socket: 'trs-3.5', says: 'type-b' }));
    expect(told?.out).toEqual(entry({ socket: 'din5' }));
  });
});

describe('The work of an answer', () => {
  const jack = (direction: 'in' | 'out', one: JackEntry): ToldJack => {
    const told = toldJack(one, direction);
    if (!told) throw new Error('needs a jack that is told');
    return told;
  };
  const output = jack('out', entry({ socket: 'din5' }));
  const input = jack('in', entry({ socket: 'trs-3.5', says: 'type-a' }));
  const answer = willTheyTalk(output, input, []);
  const work = workOfAnswer(answer, output, input);

  test('is a plan that every other page can open, and its lead works', () => {
    if (!work) throw new Error('needs a work');
    expect(edited(work.plan).ok).toBe(true);
    expect(verdictOf(work).outcome).toBe('flows');
    expect(gradeOf(answer)).toBe('good');
  });

  test('is drawn and said with what each wire joins', () => {
    if (!work) throw new Error('needs a work');
    const { conductors } = drawAnswer(work, 700);
    expect(conductors).toHaveLength(work.plan.leads[0]?.conductors.length ?? 0);
    const said = sayDrawing(work);
    for (const { name } of work.plan.leads) expect(said).toContain(`${name}: `);
  });
});
