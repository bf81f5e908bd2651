/** Rules of the house that tools hold: each fails on an offence planted here, and the project keeps them all. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
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

/** Folders of a project of its own, in which offences are planted, one a file. */
const PLANTED = { core: 'src/core/wiring', browser: 'tests/pages' } as const;
type Place = keyof typeof PLANTED;

const long = (count: number) => `${'// a reason\n'.repeat(count)}`;
const functionOf = (lines: number) =>
  `/** Words. */\nexport function a(): void {\n${'\n'.repeat(lines - 2)}}\n`;
const SIGNATURES = 'export function a(b: 1): 1;\nexport function a(b: 2): 2;\n';

/** What is planted where, in words, and the rule that must refuse it; none where it must be allowed. */
const OFFENCES: readonly (readonly [what: string, place: Place, text: string, rule?: string])[] = [
  ['an export without a doc block', 'core', 'export const a = 1;\n', 'house(doc-block)'],
  ['a doc block that stands apart', 'core', '/** Words. */\n\nexport const a = 1;\n', 'house(doc-block)'],
  ['a plain comment in its place', 'core', '// Words.\nexport const a = 1;\n', 'house(doc-block)'],
  ['an export apart from its declaration', 'core', 'const a = 1;\nexport { a };\n', 'house(doc-block)'],
  ['a file of 251 lines', 'core', long(251), 'eslint(max-lines)'],
  ['a function of 61 lines', 'core', functionOf(61), 'eslint(max-lines-per-function)'],
  [
    'a promise that nobody waits for',
    'core',
    'const a = async () => 1;\n/** Words. */\nexport const b = (): void => {\n  a();\n};\n',
    'typescript(no-floating-promises)',
  ],
  [
    'a switch that leaves a case out',
    'core',
    "/** Words. */\nexport function a(b: 'c' | 'd'): number {\n  switch (b) {\n    case 'c':\n      return 1;\n  }\n  return 2;\n}\n",
    'typescript(switch-exhaustiveness-check)',
  ],
  ['a default export', 'core', '/** Words. */\nexport default 1;\n', 'house(no-default-export)'],
  ['all of another file passed on', 'core', "export * from './lead.ts';\n", 'house(no-export-star)'],
  [
    'a silenced type without a reason of ten letters',
    'core',
    '// @ts-expect-error: short\nconst a: string = 1;\n/** Words. */\nexport const b = a;\n',
    'typescript(ban-ts-comment)',
  ],
  ['an enum', 'core', '/** Words. */\nexport enum A {\n  B,\n}\n', 'house(no-enum)'],
  [
    'the whole of d3',
    'core',
    "import * as d3 from 'd3';\n/** Words. */\nexport const a = d3;\n",
    'house(no-d3-star)',
  ],
  [
    'a browser test that does not start on an emptied browser',
    'browser',
    "import { test } from '@playwright/test';\ntest('a', () => {});\n",
    'eslint(no-restricted-imports)',
  ],
  ['250 lines', 'core', long(250)],
  ['a function of 60', 'core', functionOf(60)],
  [
    'several signatures under one doc block',
    'core',
    `/** Words. */\n${SIGNATURES}export function a(b: 1 | 2): 1 | 2 {\n  return b;\n}\n`,
  ],
];

/** What the linter of code says of a project of these offences, by the place of each. */
function refusals(): readonly (readonly string[])[] {
  const folder = mkdtempSync(join(tmpdir(), 'five-milliamps-lint-'));
  for (const file of [
    '.oxlintrc.json',
    'tsconfig.json',
    'tests/support/house-rules.js',
    'tests/support/doc-block.js',
  ])
    cpSync(file, join(folder, file));
  symlinkSync(resolve('node_modules'), join(folder, 'node_modules'));
  OFFENCES.forEach(([, place, text], at) => {
    mkdirSync(join(folder, PLANTED[place]), { recursive: true });
    writeFileSync(join(folder, PLANTED[place], `planted-${at}.ts`), text);
  });
  const { stdout } = spawnSync(
    process.execPath,
    [resolve('node_modules/.bin/oxlint'), '--format', 'json', ...Object.values(PLANTED)],
    { cwd: folder, encoding: 'utf8' },
  );
  rmSync(folder, { recursive: true });
  const said = JSON.parse(stdout) as { readonly diagnostics: readonly { filename: string; code: string }[] };
  const placeOf = ({ filename }: { filename: string }) => Number(/planted-(\d+)/.exec(filename)?.[1]);
  return OFFENCES.map((_, at) => [
    ...new Set(said.diagnostics.filter((one) => placeOf(one) === at).map(({ code }) => code)),
  ]);
}

describe('Lint', () => {
  const refused = refusals();
  test.each(OFFENCES.map(([what, , , rule], at) => ({ what, rule, at })))('judges $what', ({ rule, at }) => {
    expect(refused[at]).toEqual(rule === undefined ? [] : [rule]);
  });

  test('refuses a component of 301 lines, an inline style in one, a store, and a promise that nobody waits for', async () => {
    const lint = new ESLint({
      overrideConfigFile: 'tests/eslint.config.js',
      // To read the types of all files takes half a minute.
      overrideConfig: {
        languageOptions: {
          parserOptions: { projectService: false, project: 'tests/support/lint.tsconfig.json' },
        },
      },
    });
    const broken = async (text: string): Promise<readonly (string | null)[]> => {
      const [result] = await lint.lintText(text, { filePath: 'components/parts/NumberField.svelte' });
      return result?.messages.map(({ ruleId, message }) => ruleId ?? message) ?? [];
    };
    const script = (...lines: readonly string[]) =>
      `<script lang="ts">\n  ${lines.join('\n  ')}\n</script>\n`;
    expect(await broken(script("import { writable } from 'svelte/store';", 'writable(1);'))).toContain(
      'no-restricted-imports',
    );
    expect(await broken(script('const a = async () => 1;', 'a();'))).toContain(
      '@typescript-eslint/no-floating-promises',
    );
    expect(await broken(`<p>a</p>\n${'<!-- a -->\n'.repeat(300)}`)).toContain('max-lines');
    expect(await broken('<p style="color: red">a</p>\n')).toContain('house/no-inline-style');
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
