import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { addJackToBoard } from '../../../components/keep/add-jack.ts';
import { handWriter } from '../../../components/keep/in-hand.ts';
import { keepNote, keptNote } from '../../../components/keep/notes.ts';
import {
  addVersion,
  aside,
  dropAside,
  putAside,
  readStored,
  shelfKey,
  store,
  stored,
  versions,
} from '../../../components/keep/shelf.ts';
import { demoBoard } from '../../../src/core/board/index.ts';
import { makeJack } from '../../../src/core/wiring/index.ts';
import { makePlan, readPlanText, writePlanText } from '../../../src/core/plan/index.ts';
import { SmallStore } from '../../support/small-store.ts';

const AT = '2026-05-01T10:00:00.000Z';

beforeEach(() => void vi.stubGlobal('localStorage', new SmallStore(5_000_000)));
afterEach(() => void vi.unstubAllGlobals());

describe('A shelf', () => {
  test('gives back what was put on it, with revision, tab and time', () => {
    expect(stored('board')).toEqual({});
    expect(store('board', 0, 'tab-a', AT, '{"a":1}\n')).toMatchObject({ kind: 'kept' });
    expect(stored('board').now).toEqual({ revision: 1, by: 'tab-a', at: AT, text: '{"a":1}\n' });
    expect(stored('bench')).toEqual({});
  });

  test('is not written by a tab that has not seen its last revision, and hands that one back', () => {
    store('board', 0, 'tab-a', AT, 'one');
    store('board', 1, 'tab-b', AT, 'two');
    expect(store('board', 1, 'tab-a', AT, 'three')).toEqual({
      kind: 'clash',
      stored: { revision: 2, by: 'tab-b', at: AT, text: 'two' },
    });
    expect(stored('board').now?.text).toBe('two');
  });

  test('reads a plan of an earlier workbook, which was stored without a line about it', () => {
    const text = writePlanText(demoBoard());
    expect(readStored(text)).toEqual({ revision: 0, by: '', at: '', text });
    localStorage.setItem(shelfKey('bench'), text);
    expect(store('bench', 0, 'tab-a', AT, 'next')).toMatchObject({ kind: 'kept' });
  });

  test('says that the store is full, and what was there stays', () => {
    vi.stubGlobal('localStorage', new SmallStore(200));
    store('board', 0, 'tab-a', AT, 'small');
    expect(store('board', 1, 'tab-a', AT, 'x'.repeat(300))).toEqual({
      kind: 'failed',
      full: true,
      why: 'no room',
    });
    expect(stored('board').now?.text).toBe('small');
    expect(addVersion('board', { at: AT, text: 'x'.repeat(300) })).toBe(false);
  });

  test('says why a store that is refused cannot be read', () => {
    vi.stubGlobal('localStorage', {
      getItem: () => {
        throw new DOMException('not allowed', 'SecurityError');
      },
    });
    expect(stored('board')).toEqual({ why: 'not allowed' });
    expect(store('board', 0, 'tab-a', AT, 'one')).toEqual({
      kind: 'failed',
      full: false,
      why: 'not allowed',
    });
    expect([versions('board'), aside('board')]).toEqual([{ list: [] }, undefined]);
  });

  test('keeps at most 20 versions and a million characters of them, newest first, none twice', () => {
    for (let number = 1; number <= 25; number++) addVersion('board', { at: AT, text: `plan ${number}` });
    addVersion('board', { at: AT, text: 'plan 20' });
    expect(versions('board').list.map(({ text }) => text)).toEqual(
      [20, 25, 24, 23, 22, 21, 19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6].map(
        (one) => `plan ${one}`,
      ),
    );
    for (const letter of ['a', 'b', 'c']) addVersion('board', { at: AT, text: letter.repeat(400_000) });
    expect(versions('board').list.map(({ text }) => text[0])).toEqual(['c', 'b']);
  });

  test('hands back what can be read of a spoiled list of versions, and puts the list aside before it writes a new one', () => {
    const half = '[{"at":5},{"at":"x","text":"good"}]';
    localStorage.setItem(shelfKey('board', ' versions'), half);
    expect(versions('board')).toEqual({ list: [{ at: 'x', text: 'good' }], broken: half });
    expect(addVersion('board', { at: AT, text: 'new' })).toBe(true);
    expect(versions('board')).toEqual({
      list: [
        { at: AT, text: 'new' },
        { at: 'x', text: 'good' },
      ],
    });
    localStorage.setItem(shelfKey('board', ' versions'), '{');
    expect(versions('board')).toEqual({ list: [], broken: '{' });
    expect(addVersion('board', { at: AT, text: 'newer' })).toBe(true);
    expect(aside('board')).toBe(`${half}\n{`);
  });

  test('puts spoiled text aside beside what is there, each once, until it is let go', () => {
    expect(putAside('board', 'spoiled')).toBe(true);
    expect(putAside('board', 'spoiled')).toBe(true);
    expect(putAside('board', 'worse')).toBe(true);
    expect(putAside('board', 'worse')).toBe(true);
    expect(aside('board')).toBe('spoiled\nworse');
    dropAside('board');
    expect(aside('board')).toBeUndefined();
  });

  test('puts a note that cannot be read aside before another is written', () => {
    localStorage.setItem(shelfKey('record'), '{"half');
    expect(keptNote('record')).toBeUndefined();
    expect(keepNote('record', 1)).toBeUndefined();
    expect([keptNote('record'), aside('record')]).toEqual([1, '{"half']);
  });

  test('leaves a spoiled list of versions where there is no room to put it aside', () => {
    vi.stubGlobal('localStorage', new SmallStore(80));
    localStorage.setItem(shelfKey('board', ' versions'), `{${'x'.repeat(40)}`);
    expect(addVersion('board', { at: AT, text: 'new' })).toBe(false);
    expect(versions('board').broken).toBe(`{${'x'.repeat(40)}`);
  });
});

describe('A page that puts whole plans in hand', () => {
  test('does not write over what another page had in hand where that cannot be kept as a version', () => {
    const text = writePlanText(demoBoard());
    vi.stubGlobal('localStorage', new SmallStore(text.length + 100));
    store('bench', 0, 'tab-a', AT, text);
    expect(handWriter()(makePlan({}))).toBe('there is no room to keep what is in hand as an earlier version');
    expect(stored('bench').now?.text).toBe(text);
  });
});

describe('A jack from the jack finder', () => {
  const jack = makeJack('in', 'trs-3.5', 'type-b');

  function keptDevices() {
    const reading = readPlanText(stored('board').now?.text ?? '');
    if (!reading.ok) throw new Error('test: the kept board cannot be read');
    return reading.plan.devices;
  }

  test('goes to a new device of an empty board, and the next one beside it', () => {
    expect(addJackToBoard(jack, 'mystery box')).toEqual({
      ok: true,
      words: "The jack is on the board plan, on a new device 'mystery box'.",
    });
    expect(addJackToBoard(makeJack('out', 'din5', 'din'), 'mystery box').words).toBe(
      "The jack is on the board plan, on 'mystery box'.",
    );
    expect(keptDevices()).toMatchObject([
      {
        name: 'mystery box',
        jacks: [
          { name: 'IN', connector: 'trs-3.5', style: 'type-b', alongCentimetres: 2.5 },
          { name: 'OUT', connector: 'din5', style: 'din', alongCentimetres: 5 },
        ],
      },
    ]);
  });

  test('leaves what was kept before among the versions', () => {
    const text = writePlanText(demoBoard());
    store('board', 0, 'tab-a', AT, text);
    expect(addJackToBoard(jack, 'mystery box').ok).toBe(true);
    expect(keptDevices()).toHaveLength(9);
    expect(versions('board').list).toEqual([{ at: AT, text }]);
    expect(stored('board').now?.revision).toBe(2);
  });

  test('is refused in words without a name, by a spoiled board and by a full store', () => {
    expect(addJackToBoard(jack, ' ').words).toBe('name: expected the name of a device, got nothing.');
    store('board', 0, 'tab-a', AT, '{}');
    expect(addJackToBoard(jack, 'box')).toMatchObject({ ok: false });
    expect(stored('board').now?.text).toBe('{}');
    vi.stubGlobal('localStorage', new SmallStore(100));
    expect(addJackToBoard(jack, 'box').words).toBe('This browser does not keep the board (no room).');
    const text = writePlanText(demoBoard());
    vi.stubGlobal('localStorage', new SmallStore(text.length + 100));
    store('board', 0, 'tab-a', AT, text);
    expect(addJackToBoard(jack, 'box').words).toBe(
      'This browser has no room to keep the board as an earlier version. It is as it was.',
    );
    expect(stored('board').now?.text).toBe(text);
  });
});
