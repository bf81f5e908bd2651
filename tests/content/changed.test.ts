import { describe, expect, test } from 'vitest';
import { addressesIn, reachOf, standingOn } from '../support/changed.ts';

const arrow = (from: string, to: string) => ({ from, to, relative: true });
const IMPORTS = [
  arrow('src/core/wiring/index.ts', 'src/core/wiring/lead.ts'),
  arrow('src/draw/lead.ts', 'src/core/wiring/index.ts'),
  arrow('components/bench/Bench.svelte', 'src/draw/lead.ts'),
  arrow('components/bench/Bench.svelte', 'components/bench/worker.ts?worker'),
  arrow('src/pages/bench.astro', 'components/bench/Bench.svelte'),
  arrow('content/lessons/02-two/index.mdx', 'components/lesson/Two.svelte'),
  arrow('src/pages/lessons/[name].astro', 'components/page/Part.astro'),
  arrow('tests/core/wiring/lead.test.ts', 'src/core/wiring/lead.ts'),
  arrow('tests/draw/other.test.ts', 'src/draw/other.ts'),
  arrow('src/cli/verdict.ts', 'src/core/wiring/index.ts'),
  arrow('tests/widgets/hands.test.ts', 'tests/support/hands.ts'),
];
const PAGES = ['/', '/404.html', '/bench/', '/lessons/', '/lessons/one/', '/lessons/two/'];
const SOURCES = [
  'src/pages/index.astro',
  'src/pages/404.astro',
  'src/pages/bench.astro',
  'src/pages/plan.schema.json.ts',
  'src/pages/lessons/index.astro',
  'src/pages/lessons/[name].astro',
  'content/lessons/01-one/index.mdx',
  'content/lessons/02-two/index.mdx',
];
const TESTS = new Map([
  ['tests/widgets/bench.test.ts', 'await page.goto(`/bench/${hash}`);'],
  ['tests/widgets/two.test.ts', "await page.goto('/lessons/two/');"],
  ['tests/widgets/hands.test.ts', "await page.goto('/elsewhere/');"],
]);
const reach = (...changed: readonly string[]) => reachOf(changed, IMPORTS, TESTS, SOURCES);

describe('What a change can break', () => {
  test('is all that stands on a file, over any number of steps, and nothing else', () => {
    expect([...standingOn(['src/draw/lead.ts'], IMPORTS)]).toEqual([
      'src/draw/lead.ts',
      'components/bench/Bench.svelte',
      'src/pages/bench.astro',
    ]);
  });

  test('includes the tests, the command line and the pages of a file of the core', () => {
    expect(reach('src/core/wiring/lead.ts')).toEqual({
      all: false,
      unitTests: ['tests/cli', 'tests/content', 'tests/core/wiring/lead.test.ts'],
      browserTests: ['tests/widgets/bench.test.ts'],
      addresses: ['/bench/'],
    });
  });

  test('includes the page that starts a changed worker', () => {
    expect(reach('components/bench/worker.ts').addresses).toEqual(['/bench/']);
  });

  test('is one lesson for the widget of one, and all of them for what every lesson may hold', () => {
    expect(reach('components/lesson/Two.svelte').addresses).toEqual(['/lessons/two/']);
    expect(reach('content/lessons/01-one/links.json').addresses).toEqual(['/lessons/one/']);
    expect(reach('components/page/Part.astro').addresses).toEqual(['/lessons/one/', '/lessons/two/']);
  });

  test('is every page for the words of the glossary', () => {
    expect(reach('content/reference/glossary.json').addresses).toEqual(PAGES);
  });

  test('includes a browser test that was changed, or what it stands on', () => {
    expect(reach('tests/support/hands.ts').browserTests).toEqual(['tests/widgets/hands.test.ts']);
  });

  test('is everything for a change of the tools', () => {
    expect(reach('package.json').all).toBe(true);
    expect(reach('tests/eslint.config.js').all).toBe(true);
    expect(reach('.oxlintrc.json').all).toBe(true);
    expect(reach('src/draw/lead.ts').all).toBe(false);
  });

  test('reads the addresses that a browser test opens', () => {
    const text =
      "goto('/'); goto(`/board/#plan=${a}`); openPart(page, '/lessons/prove-it/', 2); click('a/b/');";
    expect(addressesIn(text)).toEqual(['/', '/board/', '/lessons/prove-it/']);
  });
});
