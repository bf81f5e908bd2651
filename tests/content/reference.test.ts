import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { STATUS_WORDS } from '../../components/parts/status-words.ts';
import { OUTCOMES, outcomeWords } from '../../src/core/verdict/index.ts';

interface Entry {
  readonly id: string;
  readonly term?: string;
  readonly words?: string;
  readonly status?: string;
  readonly see?: readonly string[];
  readonly sources?: readonly string[];
}

const FILES = ['statuses', 'sources', 'disagreements', 'glossary', 'cautions'] as const;

function read(name: (typeof FILES)[number]): readonly Entry[] {
  return JSON.parse(readFileSync(`content/reference/${name}.json`, 'utf8')) as readonly Entry[];
}

const ids = (name: (typeof FILES)[number]) => new Set(read(name).map(({ id }) => id));

describe('Reference data', () => {
  test.each(FILES)('%s.json gives every entry an id of its own', (name) => {
    const entries = read(name);
    expect(entries.length).toBeGreaterThan(0);
    expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length);
  });

  test.each(['sources', 'glossary', 'cautions'] as const)(
    '%s.json gives every entry a known status',
    (name) => {
      const known = ids('statuses');
      expect(read(name).filter(({ status }) => status === undefined || !known.has(status))).toEqual([]);
    },
  );

  test('the bench tells a status in the words of statuses.json', () => {
    const words = Object.fromEntries(read('statuses').map(({ id, words: told }) => [id, told]));
    expect(words).toMatchObject(STATUS_WORDS);
  });

  test.each(['disagreements', 'cautions'] as const)('%s.json names only sources that are listed', (name) => {
    const known = ids('sources');
    expect(read(name).flatMap(({ sources = [] }) => sources.filter((id) => !known.has(id)))).toEqual([]);
  });

  test('the glossary points only to its own entries, and no entry to itself', () => {
    const known = ids('glossary');
    const wrong = read('glossary').flatMap(({ id, see = [] }) =>
      see.filter((to) => to === id || !known.has(to)),
    );
    expect(wrong).toEqual([]);
  });

  test('the glossary explains every word of the trade that the workbook uses as it is', () => {
    const terms = new Set(read('glossary').map(({ term = '' }) => term.toLowerCase()));
    const words = [
      ...['current loop', 'source', 'sink', 'shield', 'tip', 'ring', 'sleeve', 'din', 'trs', 'ts'],
      ...['in', 'out', 'thru', 'type a', 'type b', 'isolated', 'daisy chain', 'hub', 'continuity'],
      ...['program change', 'channel', 'two-contact', 'both-ways', 'tip-signal', 'ring-signal', 'in-and-out'],
      ...OUTCOMES.filter((one) => one !== 'unsolved').map((one) => outcomeWords(one).label.toLowerCase()),
    ];
    expect(words.filter((word) => !terms.has(word))).toEqual([]);
  });
});
