/** Lint of Svelte and Astro files. Of code that is .oxlintrc.json, and its rules hold here too. */
import './support/one-program.js';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, globalIgnores } from 'eslint/config';
import astro from 'eslint-plugin-astro';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';
import house from './support/house-rules.js';

const root = new URL('..', import.meta.url);

/** The rules of code: their file holds comments, each on a line of its own. */
const code = JSON.parse(
  readFileSync(new URL('.oxlintrc.json', root), 'utf8').replaceAll(/^\s*\/\/.*$/gm, ''),
);

/** Rules as ESLint names them. */
const named = (rules) =>
  Object.fromEntries(
    Object.entries(rules).map(([name, how]) => [name.replace(/^typescript\//, '@typescript-eslint/'), how]),
  );

/** Rules that need to know types, which only Svelte files are given, and all others. */
const needsTypes = (name) => ts.plugin.rules[name.split('/')[1]]?.meta.docs.requiresTypeChecking === true;
const [typed, plain] = [true, false].map((asked) =>
  named(Object.fromEntries(Object.entries(code.rules).filter(([name]) => needsTypes(name) === asked))),
);

/** Svelte's extension is named for all files alike, so that one program serves them. */
const WITH_TYPES = {
  parser: ts.parser,
  projectService: true,
  tsconfigRootDir: fileURLToPath(root),
  extraFileExtensions: ['.svelte'],
};

const SVELTE = ['**/*.svelte', '**/*.svelte.ts'];

export default defineConfig(
  globalIgnores([
    'dist/',
    '.astro/',
    '.svelte-check/',
    'test-results/',
    '**/*.{js,mjs,ts}',
    '!**/*.svelte.ts',
  ]),
  svelte.configs.recommended,
  astro.configs.recommended,
  {
    plugins: { house, '@typescript-eslint': ts.plugin },
    rules: { ...plain, 'house/no-inline-style': 'error' },
  },
  ...code.overrides.map(({ files, rules }) => ({ files, rules: named(rules) })),
  { files: SVELTE, languageOptions: { parserOptions: WITH_TYPES }, rules: typed },
  {
    files: SVELTE,
    rules: {
      // Props that a parent may bind stand in one statement with those that never change.
      'prefer-const': 'off',
      'svelte/prefer-const': 'error',
      // It takes every address for state, also one that is used up on the spot.
      'svelte/prefer-svelte-reactivity': 'off',
      // State lives in runes. Without stores, the look for one that is read without its sign only costs seconds.
      'no-restricted-imports': ['error', { name: 'svelte/store', message: 'Keep state in runes.' }],
      'svelte/require-store-reactive-access': 'off',
    },
  },
);
