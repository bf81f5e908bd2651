/** What the build sheet and the test of a lead keep between visits, and the way back from paper. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { keptNote } from '../../../components/keep/notes.ts';
import {
  MOST_KEPT,
  NOT_BEGUN,
  testKind,
  testShelf,
  rememberTest,
} from '../../../components/making/test-state.ts';
import type { TestState } from '../../../components/making/test-state.ts';
import { NO_NOTE, SHEET_KIND, choicesFor, leadOf, wiringOf } from '../../../components/making/sheet-state.ts';
import type { SheetNote } from '../../../components/making/sheet-state.ts';
import { leadAddress, siteAddress, leadSquare } from '../../../components/making/way-back.ts';
import { planFromHash } from '../../../components/keep/plan-files.ts';
import { COLOUR_CODES, FIRST_STOCK, fullRows, proofRows } from '../../../src/core/making/index.ts';
import type { RowAnswer } from '../../../src/core/making/index.ts';
import { planOfLink } from '../../../src/core/plan/index.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import { SmallStore } from '../../support/small-store.ts';

const LEAD = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));
const OTHER = makeLead('din5', 'trs-3.5', wires('4-tip', '5-ring', '2-sleeve'));
const plan = (...leads: (typeof LEAD)[]) =>
  planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'type-a'), leads);

beforeEach(() => void vi.stubGlobal('localStorage', new SmallStore()));
afterEach(() => void vi.unstubAllGlobals());

describe('The choices of a sheet', () => {
  const chosen: SheetNote = {
    ...NO_NOTE,
    lead: 'lead 1',
    coloursOf: wiringOf(LEAD),
    full: true,
    choices: {
      ...NO_NOTE.choices,
      plugTakesMetres: { from: 6e-3 },
      colours: [COLOUR_CODES[0], undefined, COLOUR_CODES[1]],
      stock: FIRST_STOCK,
    },
  };

  test('come back as they were kept', () => {
    const { value, problem } = SHEET_KIND.read(SHEET_KIND.write(chosen));
    expect(problem).toBeUndefined();
    expect(value).toEqual(chosen);
  });

  test('that cannot be read one by one are as on a first visit', () => {
    const spoiled = {
      lead: 7,
      way: 'smoke',
      full: 'yes',
      choices: { bodies: { from: 'wood' }, stock: { cores: 2 } },
    };
    expect(SHEET_KIND.read(JSON.stringify(spoiled)).value).toEqual(NO_NOTE);
    expect(SHEET_KIND.read('{').value).toBeUndefined();
  });

  test('of colours hold for the wiring they were made for, and for no other', () => {
    expect(choicesFor(chosen, LEAD)).toEqual(chosen.choices);
    expect(choicesFor(chosen, OTHER)).toEqual({ ...chosen.choices, colours: [] });
  });

  test('take the lead by name, else the first with a wire in it', () => {
    const two = plan({ ...LEAD, conductors: [] }, OTHER);
    expect(leadOf(two, NO_NOTE)?.name).toBe('lead 2');
    expect(leadOf(plan(LEAD, OTHER), { ...NO_NOTE, lead: 'lead 2' })?.conductors).toEqual(OTHER.conductors);
    expect(leadOf(plan({ ...LEAD, conductors: [] }), NO_NOTE)).toBeUndefined();
  });
});

describe('The test of a lead', () => {
  /** Every row answered as planned. */
  function answered(full: boolean): TestState {
    const rows = full ? fullRows(LEAD) : proofRows(LEAD);
    const answers = rows.map(({ words, expects }): [string, RowAnswer] => [
      words,
      expects === 'beep' ? { of: 'conductor', said: 'beep' } : { of: 'apart', beeping: [0] },
    ]);
    const [place] = rows[0]?.places ?? [];
    const extra = place ? [{ ...place, says: 'flickers' as const }] : [];
    return {
      full,
      answers: new Map(answers),
      extra,
      computer: '2026-01-02: All 328 messages came back right.',
    };
  }

  test('comes back row by row, the short and the full one', () => {
    for (const full of [false, true]) {
      const kind = testKind(LEAD);
      expect(kind.read(kind.write(answered(full)))).toEqual({ value: answered(full) });
    }
    expect(testKind(LEAD).read(testKind(LEAD).write(NOT_BEGUN))).toEqual({ value: NOT_BEGUN });
  });

  test('of one lead is not taken for that of another, and it is said', () => {
    const turned = makeLead('trs-3.5', 'trs-3.5', wires('tip-tip', 'ring-ring', 'sleeve-sleeve'));
    const { value, problem } = testKind(turned).read(testKind(LEAD).write(answered(false)));
    // Rows that both leads have, such as the sleeve against the tip, are the same rows.
    const rows = proofRows(turned).map(({ words }) => words);
    for (const words of value?.answers.keys() ?? []) expect(rows).toContain(words);
    expect(value?.answers.size).toBeLessThan(answered(false).answers.size);
    expect(value?.extra).toEqual([]);
    expect(problem).toBe('some of it is not known here');
  });

  test('leaves out places that the row has not', () => {
    const row = proofRows(LEAD).find(({ expects }) => expects === 'silent');
    const note = { answers: [[row?.words, { of: 'apart', beeping: [0, 99, -1, 0.5, 'x'] }]] };
    const { value } = testKind(LEAD).read(JSON.stringify(note));
    expect(value?.answers.get(row?.words ?? '')).toEqual({ of: 'apart', beeping: [0] });
  });

  test('stands under the wiring of its lead, whatever the lead is called and however long it is', () => {
    expect(testShelf({ ...LEAD, name: 'x', lengthMetres: 9 })).toBe(testShelf(LEAD));
    expect(testShelf(OTHER)).not.toBe(testShelf(LEAD));
  });

  test('is remembered for so many leads, and the oldest goes first', () => {
    const leads = Array.from({ length: MOST_KEPT + 1 }, (_, at) => ({
      ...LEAD,
      // Wirings of no use, but each another.
      conductors: [...LEAD.conductors, { from: `x${at}`, to: 'tip' }] as unknown as typeof LEAD.conductors,
    }));
    for (const lead of leads) {
      localStorage.setItem(`five-milliamps ${testShelf(lead)}`, 'a test');
      rememberTest(lead);
    }
    const [first, second] = leads;
    const kept = (lead: typeof first) => lead && localStorage.getItem(`five-milliamps ${testShelf(lead)}`);
    expect([kept(first), kept(second)]).toEqual([null, 'a test']);
    expect(keptNote('proofs')).toHaveLength(MOST_KEPT);
  });
});

describe('The way back from paper', () => {
  test('leads to the same lead again, first of the plan that it opens', async () => {
    const address = await leadAddress('https://example.org', plan(LEAD, OTHER), 'lead 2');
    expect(address.startsWith('https://example.org/cable-sheet/#')).toBe(true);
    const found = await planFromHash(address.slice(address.indexOf('#')));
    expect(found.plan?.leads[0]?.conductors).toEqual(OTHER.conductors);
  });

  test('begins at the address that the reader typed, or at the page itself', () => {
    expect(siteAddress('', 'https://own.example')).toEqual({ address: 'https://own.example' });
    expect(siteAddress(' https://a.example/x/?q#h ', '')).toEqual({ address: 'https://a.example/x' });
    for (const typed of ['a.example', 'ftp://a.example', 'javascript:alert(1)'])
      expect(siteAddress(typed, '')).toEqual({
        problem: `address: expected one that begins with https:// or http://, got '${typed}'`,
      });
  });

  test('has a square code where it is small enough to print beside the drawing', async () => {
    const code = await leadSquare('https://example.org/cable-sheet/#plan=abc');
    // A module of 0.42 mm, four light ones on each side by its standard.
    expect(code?.sideMm).toBeCloseTo((code?.modules ?? 0) * 0.42, 9);
    expect(code?.modules).toBeGreaterThan(21 + 8 - 1);
    expect(await leadSquare('x'.repeat(1200))).toBeUndefined();
    expect(await leadSquare('x'.repeat(9000))).toBeUndefined();
  });
});
