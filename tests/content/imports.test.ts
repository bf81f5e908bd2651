import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { complaint, CORE_ARROWS, importsIn, importsUnder } from '../support/imports.ts';

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
    ['src/cli/verdict.ts', 'src/core/plan/index.ts'],
  ])('allows %s to import %s', (from, to) => {
    expect(judge(from, to)).toBeUndefined();
  });

  test('has no circles among the folders of the core', () => {
    const done = new Set<string>();
    const path: string[] = [];
    const visit = (folder: string): void => {
      if (path.includes(folder)) throw new Error(`circle: ${[...path, folder].join(' <- ')}`);
      if (done.has(folder)) return;
      path.push(folder);
      for (const other of CORE_ARROWS[folder] ?? []) visit(other);
      path.pop();
      done.add(folder);
    };
    for (const folder of Object.keys(CORE_ARROWS)) visit(folder);
    expect(done.size).toBe(Object.keys(CORE_ARROWS).length);
  });
});

describe('The project', () => {
  test('keeps every import in its direction, with nothing from outside in the core', () => {
    const complaints = ALL.filter(({ from }) => !isInsideTest(from))
      .map(complaint)
      .filter((text) => text !== undefined);
    expect(complaints).toEqual([]);
  });

  test('imports only files that exist', () => {
    const missing = ALL.filter(({ to, relative }) => relative && !existsSync(to.replace(/\?.*$/, '')))
      .filter(({ from }) => !from.startsWith('tests/content/imports'))
      .map(({ from, to }) => `${from}: no file '${to}'`);
    expect(missing).toEqual([]);
  });
});
