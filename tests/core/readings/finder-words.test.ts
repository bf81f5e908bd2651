/** How the answer of the finder stands, in words, for every way it can stand. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/core/readings/finder.ts';
import { sayFinding, sayProbability } from '../../../src/core/readings/finder-words.ts';
import type { JackUnderTest } from '../../../src/core/readings/subjects.ts';
import { makeJack } from '../../../src/core/wiring/link.ts';

const BEST: JackUnderTest = { kind: 'control', jack: makeJack('out', 'trs-3.5', 'type-a') };

/** A finding with these names, each with its share. */
function finding(
  state: Finding['state'],
  shares: Readonly<Record<string, number>>,
  more: Partial<Finding> = {},
): Finding {
  const ranked = Object.entries(shares).map(([name, probability]) => ({ name, probability, best: BEST }));
  return { state, ranked, none: 0, weighed: [], doubtful: [], odd: [], ...more };
}

describe('a probability in words', () => {
  it('pretends to no more than it knows, at both ends', () => {
    expect([1, 0.991, 0.99, 0.72, 0.015, 0.01, 0.009, 0].map(sayProbability)).toEqual([
      ...['more than 99 %', 'more than 99 %', '99 %', '72 %'],
      ...['2 %', '1 %', 'less than 1 %', 'less than 1 %'],
    ]);
  });
});

describe('how an answer stands', () => {
  it('names a jack that is sure, with its share and its likeliest circuit', () => {
    expect(sayFinding(finding('sure', { 'out type-a': 0.985 }), true)).toBe(
      'This is Type A out, 99 %; most likely Type A out, 5 V output.',
    );
  });

  it('sends one back to contacts, lead and manual where nothing fits', () => {
    const words = sayFinding(finding('fits-nothing', { 'out type-a': 0.02 }), false);
    expect(words).toContain('These readings fit no jack that the workbook knows.');
    expect(words).toContain('Do not plug anything in on a guess.');
    expect(words).not.toContain('Type A');
  });

  it('says how many names are left while there is more to read, and names up to four of them', () => {
    const say = (shares: Readonly<Record<string, number>>): string =>
      sayFinding(finding('not-sure', shares), true);
    expect(say({ 'out type-a': 0.04, headphone: 0.03 })).toBe('Not sure yet: no kind of jack fits so far.');
    expect(say({ 'out type-a': 0.9, headphone: 0.04 })).toBe(
      'Probably Type A out, 90 %; one more reading will tell.',
    );
    expect(say({ 'out type-a': 0.5, 'out type-b': 0.45 })).toBe(
      'Not sure yet. Still likely: Type A out and Type B out.',
    );
    const five = { 'out type-a': 0.3, 'out type-b': 0.2, 'in type-a': 0.2, 'in type-b': 0.2, headphone: 0.1 };
    expect(say(five)).toBe('Not sure yet: 5 kinds of jack are still likely.');
  });

  it('says that a meter cannot tell where there is nothing more to read, and whom to ask', () => {
    const say = (shares: Readonly<Record<string, number>>): string =>
      sayFinding(finding('not-sure', shares), false);
    expect(say({ 'out type-a': 0.9, headphone: 0.04 })).toBe(
      'Probably Type A out, 90 %, but no safe reading is left that would make sure. Look in the manual, or ask the maker.',
    );
    expect(say({ 'out type-a': 0.5, headphone: 0.5 })).toBe(
      'A meter cannot tell: Type A out and headphone output read the same in every safe way. Look in the manual, or ask the maker.',
    );
    expect(say({})).toBe('No jack is known with this connector.');
  });

  it('counts from one what it sets aside as doubtful, and what agrees but is odd', () => {
    const say = (more: Partial<Finding>): string =>
      sayFinding(finding('not-sure', { 'out type-a': 0.9 }, more), true).replace(/^.* will tell\./, '');
    expect(say({ doubtful: [0] })).toBe(
      ' Reading 1 does not fit the others and is set aside as doubtful: take it again.',
    );
    expect(say({ doubtful: [1, 3] })).toBe(
      ' Readings 2 and 4 do not fit the others and are set aside as doubtful: take them again.',
    );
    expect(say({ odd: [0, 2] })).toBe(
      ' Readings 1 and 3 agree, but do not fit the others: something in this device is unusual.',
    );
    expect(say({})).toBe('');
  });
});
