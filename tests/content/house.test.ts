/** Rules of the house that tools hold: each fails on an offence planted here, and the project keeps them all. */
import { readFileSync } from 'node:fs';
import { ESLint } from 'eslint';
import { describe, expect, test } from 'vitest';
import { exportsIn, unusedExports, usesIn } from '../support/exports.ts';
import { filesUnder } from '../support/imports.ts';

const texts = new Map(
  filesUnder('.', ['src', 'components', 'content', 'tests'])
    .filter((path) => /\.(ts|js|mjs|svelte|astro|mdx)$/.test(path))
    .map((path) => [path, readFileSync(path, 'utf8')]),
);

/** A rule for whatever stands after something. */
const DOOR_LATER = /\bimport\(\s*['"`][^'"`]*core\/\w+\/index\.ts/;
const AFTER_ANYTHING = /[+~]\s*\*\s*[,){]/;

/** The project's rules, with the types of three files alone: to read those of all takes half a minute. */
const lint = new ESLint({
  overrideConfigFile: 'tests/eslint.config.js',
  overrideConfig: {
    languageOptions: {
      parserOptions: { projectService: false, project: 'tests/support/lint.tsconfig.json' },
    },
  },
});

/** The rules that a text breaks when it stands at `path`, one of the three files. */
async function broken(path: string, text: string): Promise<readonly (string | null)[]> {
  const [result] = await lint.lintText(text, { filePath: path });
  return [...new Set(result?.messages.map(({ ruleId, message }) => ruleId ?? message))].sort();
}

const CORE_FILE = 'src/core/wiring/timing.ts';
const long = (count: number) => `${'// a reason\n'.repeat(count)}`;
const functionOf = (lines: number) =>
  `/** Words. */\nexport function a(): void {\n${'\n'.repeat(lines - 2)}}\n`;

describe('Lint', () => {
  test.each([
    ['an export without a doc block', 'export const a = 1;\n', 'house/doc-block'],
    ['a doc block that stands apart', '/** Words. */\n\nexport const a = 1;\n', 'house/doc-block'],
    ['a plain comment in its place', '// Words.\nexport const a = 1;\n', 'house/doc-block'],
    ['an export apart from its declaration', 'const a = 1;\nexport { a };\n', 'house/doc-block'],
    ['a file of 251 lines', long(251), 'max-lines'],
    ['a function of 61 lines', functionOf(61), 'max-lines-per-function'],
    [
      'a promise that nobody waits for',
      'const a = async () => 1;\n/** Words. */\nexport const b = (): void => {\n  a();\n};\n',
      '@typescript-eslint/no-floating-promises',
    ],
    [
      'a switch that leaves a case out',
      "/** Words. */\nexport function a(b: 'c' | 'd'): number {\n  switch (b) {\n    case 'c':\n      return 1;\n  }\n  return 2;\n}\n",
      '@typescript-eslint/switch-exhaustiveness-check',
    ],
    ['a default export', '/** Words. */\nexport default 1;\n', 'no-restricted-syntax'],
    ['all of another file passed on', "export * from './lead.ts';\n", 'no-restricted-syntax'],
  ])('refuses %s', async (_, text, rule) => {
    expect(await broken(CORE_FILE, text)).toEqual([rule]);
  });

  test('refuses a component of 301 lines, an inline style in one, and a store', async () => {
    const path = 'components/parts/NumberField.svelte';
    const store = "<script>\n  import { writable } from 'svelte/store';\n  writable(1);\n</script>\n";
    expect(await broken(path, store)).toContain('no-restricted-imports');
    expect(await broken(path, `<p>a</p>\n${'<!-- a -->\n'.repeat(300)}`)).toContain('max-lines');
    expect(await broken(path, '<p style="color: red">a</p>\n')).toContain('no-restricted-syntax');
  });

  test('refuses a browser test that does not start on an emptied browser', async () => {
    expect(
      await broken(
        'tests/pages/soak.test.ts',
        "import { test } from '@playwright/test';\ntest('a', () => {});\n",
      ),
    ).toEqual(['no-restricted-imports']);
  });

  test('allows 250 lines, a function of 60, and several signatures under one doc block', async () => {
    expect(await broken(CORE_FILE, long(250))).toEqual([]);
    expect(await broken(CORE_FILE, functionOf(60))).toEqual([]);
    const signatures = 'export function a(b: 1): 1;\nexport function a(b: 2): 2;\n';
    expect(
      await broken(
        CORE_FILE,
        `/** Words. */\n${signatures}export function a(b: 1 | 2): 1 | 2 {\n  return b;\n}\n`,
      ),
    ).toEqual([]);
  });
});

describe('Addresses', () => {
  /** An address written from the root of the host, which would leave the folder that the site may stand in. */
  const fromRoot = (text: string): readonly string[] =>
    text.match(/\b(?:href|src|action)=(?:"\/|\{[`']\/)[^>\s]*/g) ?? [];

  test('from the root are found in markup, as text and as code', () => {
    expect(fromRoot('<a href="/bench/">')).toHaveLength(1);
    expect(fromRoot('<a href={`/bench/${hash}`}>')).toHaveLength(1);
    expect(fromRoot("<a href={withBase('/bench/')}>")).toEqual([]);
  });

  test('of the site pass through withBase on every page', () => {
    const markup = [...texts].filter(([path]) => /^(components|src)\/.*\.(svelte|astro)$/.test(path));
    expect(markup.length).toBeGreaterThan(100);
    expect(markup.flatMap(([path, text]) => fromRoot(text).map((found) => `${path}: ${found}`))).toEqual([]);
  });

  test('asked for by a browser test are those of the site, wherever it stands', () => {
    const asked = [...texts].filter(([path]) => /^tests\/(pages|widgets|support)\//.test(path));
    expect(asked.length).toBeGreaterThan(60);
    const fromHost = /\b(?:goto|get|assign)\(['"`]\/(?!lms|alone)/;
    expect(fromHost.test("await page.goto('/bench/');")).toBe(true);
    expect(asked.filter(([, text]) => fromHost.test(text)).map(([path]) => path)).toEqual([]);
  });
});

describe('Exports', () => {
  test('are found as declared and as passed on', () => {
    const text =
      "export const a = 1;\nexport async function b() {}\nexport interface C {}\nexport type { D, E as F } from './d.ts';\nconst g = 1;\n";
    expect(exportsIn(text)).toEqual(['a', 'b', 'C', 'D', 'F']);
  });

  test('are used by names, over many lines, at run time and by patterns', () => {
    const text =
      "import x, { a, type B as c } from '../d.ts';\nexport {\n  e,\n  f as g,\n} from './h.ts';\nconst i = await import('./j.ts');\nimport.meta.glob('./k/*.ts');\n";
    expect(usesIn('src/core/wiring/x.ts', text)).toEqual([
      { file: 'src/core/d.ts', name: 'a' },
      { file: 'src/core/d.ts', name: 'B' },
      { file: 'src/core/wiring/h.ts', name: 'e' },
      { file: 'src/core/wiring/h.ts', name: 'f' },
      { file: 'src/core/wiring/j.ts', name: '*' },
      { file: 'src/core/wiring/k/*.ts', name: '*' },
    ]);
  });

  test('of a file are unused when only that file uses them; Svelte, Astro and MDX files are users', () => {
    const planted = new Map([
      [
        'src/draw/a.ts',
        'export const a = 1;\nexport const b = a;\nexport const c = b;\nexport const d = 4;\n',
      ],
      ['components/parts/B.svelte', "<script>\n  import { b } from '../../src/draw/a.ts';\n</script>\n"],
      ['src/pages/c.astro', "---\nimport { c } from '../draw/a.ts';\n---\n"],
      ['content/lessons/01-one/index.mdx', "import { d } from '../../../src/draw/a.ts';\n"],
    ]);
    expect(unusedExports(planted)).toEqual(['src/draw/a.ts: a']);
  });

  test('of the project are all used by another file', () => {
    expect(unusedExports(texts)).toEqual([]);
  });
});

describe('Rules of style', () => {
  // A browser would style all that stands in a parent anew whenever a child comes or goes: `:not(:first-child)` asks for the child alone.
  test('are never for whatever stands after something', () => {
    expect('.a > * + *, .b { margin: 0 }').toMatch(AFTER_ANYTHING);
    expect('.a > :not(:first-child), li + li { margin: 0 }').not.toMatch(AFTER_ANYTHING);
    const sheets = filesUnder('.', ['src', 'components', 'content']).filter((path) =>
      /\.(css|svelte|astro)$/.test(path),
    );
    expect(sheets.filter((path) => AFTER_ANYTHING.test(readFileSync(path, 'utf8')))).toEqual([]);
  });
});

describe('Parts fetched later', () => {
  // Who asks for a door as a whole gets all of its floor, whatever is taken of it: a file of its own names what is wanted.
  test('are never a whole door of the core', () => {
    expect("latest(import('../../src/core/signal/index.ts'), use)").toMatch(DOOR_LATER);
    expect(
      "import type { Sent } from '../../src/core/signal/index.ts'; import('./lost-bits.ts')",
    ).not.toMatch(DOOR_LATER);
    const shown = filesUnder('.', ['components', 'content', 'src/pages', 'src/layouts', 'src/offline']);
    expect(shown.filter((path) => DOOR_LATER.test(readFileSync(path, 'utf8')))).toEqual([]);
  });
});
