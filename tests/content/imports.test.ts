import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  circlesIn,
  complaint,
  COMPONENT_ARROWS,
  CORE_ARROWS,
  importsIn,
  importsUnder,
} from '../support/imports.ts';

const ALL = importsUnder('.', ['src', 'components', 'content', 'tests']);

/** Tests of one file of the core may import that file; everyone else goes through the door. */
const isInsideTest = (from: string) => /^tests\/(core|reference|speed|support)\//.test(from);

describe('Reading imports', () => {
  test('finds plain, typed, side-effect, re-exported, many-lined and dynamic imports, and workers', () => {
    const text = [
      "import { a } from './a.ts';",
      "import type { B } from '../b.ts';",
      "import './c.css';",
      "export { d } from './d.ts';",
      "import {\n  e,\n  f,\n} from 'd3-shape';",
      "const g = await import('./g.ts');",
      "new Worker(new URL('./h.ts', import.meta.url), { type: 'module' });",
    ].join('\n');
    expect(importsIn('src/core/circuit/x.ts', text).map(({ to }) => to)).toEqual([
      'src/core/circuit/a.ts',
      'src/core/b.ts',
      'src/core/circuit/c.css',
      'src/core/circuit/d.ts',
      'd3-shape',
      'src/core/circuit/g.ts',
      'src/core/circuit/h.ts',
    ]);
  });

  test('finds the imports of this project', () => {
    expect(ALL.filter(({ from }) => from.startsWith('src/')).length).toBeGreaterThan(10);
  });
});

describe('The rule of the arrows', () => {
  const judge = (from: string, to: string) => complaint({ from, to, relative: to.includes('/') });

  test.each([
    ['src/core/circuit/a.ts', 'src/core/wiring/index.ts'],
    ['src/core/verdict/a.ts', 'src/core/plan/index.ts'],
    ['src/core/plan/a.ts', 'src/core/board/index.ts'],
    ['src/core/verdict/a.ts', 'src/core/circuit/b.ts'],
    ['src/core/verdict/a.ts', 'src/core/verdict/index.ts'],
    ['src/core/wiring/a.ts', 'src/draw/b.ts'],
    ['src/core/wiring/a.ts', 'node:fs'],
    ['src/core/wiring/a.ts', 'src/core/index.ts'],
    ['src/core/nowhere/a.ts', 'src/core/wiring/index.ts'],
    ['src/draw/a.ts', 'components/bench/B.svelte'],
    ['src/draw/a.ts', 'svelte'],
    ['src/draw/a.ts', 'src/core/wiring/b.ts'],
    ['components/bench/A.svelte', 'src/core/wiring/b.ts'],
    ['components/page/A.astro', 'src/pages/b.astro'],
    ['components/board/A.svelte', 'components/meter/B.svelte'],
    ['components/parts/A.svelte', 'components/bench/B.svelte'],
    ['components/nowhere/A.svelte', 'components/parts/B.svelte'],
    ['src/cli/verdict.ts', 'src/draw/a.ts'],
    ['src/cli/verdict.ts', 'src/core/plan/plan.ts'],
    ['src/offline/integration.mjs', 'src/core/plan/index.ts'],
    ['src/layouts/Page.astro', 'components/bench/B.svelte'],
    ['content/lessons/01-one/index.mdx', 'components/bench/B.svelte'],
    ['content/lessons/01-one/index.mdx', 'content/lessons/02-two/data.ts'],
    ['content/lessons/01-one/data.ts', 'src/core/learn/links.ts'],
  ])('forbids %s to import %s', (from, to) => {
    expect(judge(from, to)).toContain(from);
  });

  test.each([
    ['src/core/verdict/a.ts', 'src/core/circuit/index.ts'],
    ['src/core/wiring/a.ts', 'src/core/wiring/b.ts'],
    ['src/core/wiring/index.ts', 'src/core/wiring/b.ts'],
    ['src/draw/a.ts', 'src/core/wiring/index.ts'],
    ['src/draw/a.ts', 'd3-shape'],
    ['components/bench/A.svelte', 'src/draw/b.ts'],
    ['src/pages/a.astro', 'components/page/B.astro'],
    ['components/meter/A.svelte', 'components/bench/B.svelte'],
    ['components/meter/A.svelte', 'components/meter/B.svelte'],
    ['src/layouts/Page.astro', 'src/styles/base.css'],
    ['content/lessons/01-one/index.mdx', 'components/lesson/B.svelte'],
    ['content/lessons/01-one/index.mdx', 'content/lessons/01-one/data.ts'],
    ['src/cli/verdict.ts', 'src/core/plan/index.ts'],
  ])('allows %s to import %s', (from, to) => {
    expect(judge(from, to)).toBeUndefined();
  });

  test.each([
    ['core', CORE_ARROWS],
    ['components', COMPONENT_ARROWS],
  ])('has no circles among the folders of %s', (_, arrows) => {
    const asImports = Object.entries(arrows).flatMap(([from, others]) =>
      others.map((to) => ({ from, to, relative: true })),
    );
    expect(circlesIn(asImports)).toEqual([]);
    const unknown = asImports.map(({ to }) => to).filter((to) => arrows[to] === undefined);
    expect(unknown).toEqual([]);
  });

  test('finds a circle of files, of two and of three, and none where files only share one', () => {
    const arrow = (from: string, to: string) => ({ from, to, relative: true });
    expect(circlesIn([arrow('a', 'b'), arrow('b', 'a')])).toEqual(['a -> b -> a']);
    expect(circlesIn([arrow('x', 'a'), arrow('a', 'b'), arrow('b', 'c?worker'), arrow('c', 'a')])).toEqual([
      'a -> b -> c -> a',
    ]);
    expect(circlesIn([arrow('a', 'b'), arrow('a', 'c'), arrow('b', 'd'), arrow('c', 'd')])).toEqual([]);
  });
});

describe('The project', () => {
  test('keeps every import in its direction, with nothing from outside in the core', () => {
    const complaints = ALL.filter(({ from }) => !isInsideTest(from))
      .map(complaint)
      .filter((text) => text !== undefined);
    expect(complaints).toEqual([]);
  });

  test('holds no circle of files', () => {
    expect(circlesIn(ALL)).toEqual([]);
  });

  test('imports only files that exist', () => {
    const missing = ALL.filter(({ to, relative }) => relative && !existsSync(to.replace(/\?.*$/, '')))
      .filter(({ from }) => !/^tests\/content\/(imports|house)\./.test(from))
      .map(({ from, to }) => `${from}: no file '${to}'`);
    expect(missing).toEqual([]);
  });
});
