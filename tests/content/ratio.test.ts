import { describe, expect, test } from 'vitest';
import { countLines, linesOf, median, overSize, ratioTable } from '../support/ratio.ts';

const lines = (count: number) => 'x\n'.repeat(count);
const TEXTS = new Map([
  ['src/core/wiring/a.ts', lines(250)],
  ['src/core/wiring/b.ts', lines(50)],
  ['src/core/verdict/a.ts', lines(251)],
  ['src/draw/a.ts', lines(400)],
  ['components/bench/A.svelte', lines(301)],
  ['components/bench/b.json', lines(900)],
  ['tests/core/wiring/a.test.ts', lines(150)],
  ['tests/reference/a.test.ts', lines(51)],
  ['tests/widgets/a.test.ts', lines(30)],
]);

describe('Tests to code', () => {
  test('are counted floor by floor, and over the core with its reference tests', () => {
    expect(countLines(TEXTS)).toEqual([
      { name: 'core/verdict', code: 251, tests: 0 },
      { name: 'core/wiring', code: 300, tests: 150 },
      { name: 'core', code: 551, tests: 201 },
      { name: 'draw', code: 400, tests: 0 },
      { name: 'components', code: 301, tests: 30 },
    ]);
  });

  test('are said with the goal, the middle file and the files over size', () => {
    const table = ratioTable(TEXTS);
    // 201 of 551 is 0.365.
    expect(table).toContain('core                  551    201   0.36  goal 0.8');
    expect(table.slice(-2)).toEqual([
      'median core file: 250 lines, of 3 files',
      'over size: components/bench/A.svelte 301, src/core/verdict/a.ts 251',
    ]);
  });
});

describe('Sizes', () => {
  test('a file of the core may have 250 lines and a component 300, and not one more', () => {
    expect(overSize(TEXTS).map(({ path }) => path)).toEqual([
      'components/bench/A.svelte',
      'src/core/verdict/a.ts',
    ]);
  });

  test('a last line counts with and without its line feed', () => {
    expect([linesOf(''), linesOf('a'), linesOf('a\n'), linesOf('a\nb')]).toEqual([0, 1, 1, 2]);
  });

  test('the middle of none is refused', () => {
    expect([median([3, 1, 2]), median([4, 1, 3, 2])]).toEqual([2, 2]);
    expect(() => median([])).toThrow('median: needs at least one number, got none');
  });
});
