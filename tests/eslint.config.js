import './support/one-program.js';
import { fileURLToPath } from 'node:url';
import { defineConfig, globalIgnores } from 'eslint/config';
import astro from 'eslint-plugin-astro';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';
import { docBlock } from './support/doc-block.js';

const STAR_IMPORT_OF_D3 = {
  selector: "ImportDeclaration[source.value='d3'] ImportNamespaceSpecifier",
  message: 'Import the d3 functions you need by name: the whole of d3 would weigh down every page.',
};

const STAR_EXPORT = {
  selector: 'ExportAllDeclaration',
  message: 'Export by name, so that the door of a folder says what goes through it.',
};

const DEFAULT_EXPORT = {
  selector: 'ExportDefaultDeclaration',
  message: 'The core uses named exports only.',
};

const ENUM = {
  selector: 'TSEnumDeclaration',
  message: 'Use a literal union made from one array.',
};

const INLINE_STYLE = {
  selector: "SvelteAttribute[key.name='style'], SvelteStyleDirective, JSXAttribute[name.name='style']",
  message: 'The content policy forbids inline styles: use a class or an SVG presentation attribute.',
};

/** Most lines of a file of the core, of a component, and of a function anywhere outside tests. */
const CORE_LINES = 250;
const COMPONENT_LINES = 300;
const FUNCTION_LINES = 60;

/** What the types tell of every file; Svelte's extension is named for all alike, so that one program serves them. */
const TYPED = {
  projectService: true,
  tsconfigRootDir: fileURLToPath(new URL('..', import.meta.url)),
  extraFileExtensions: ['.svelte'],
};

const EVERYWHERE = [STAR_IMPORT_OF_D3, STAR_EXPORT, ENUM];

export default defineConfig(
  globalIgnores(['dist/', '.astro/', '.svelte-check/', 'test-results/']),
  ts.configs.strict,
  svelte.configs.recommended,
  astro.configs.recommended,
  {
    rules: {
      eqeqeq: 'error',
      'no-console': 'error',
      'no-var': 'error',
      'object-shorthand': 'error',
      'prefer-const': 'error',
      'no-restricted-syntax': ['error', ...EVERYWHERE],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_$', ignoreRestSiblings: true },
      ],
    },
  },
  {
    files: ['src/**/*.ts', 'components/**/*.ts', 'tests/**/*.ts', '**/*.svelte'],
    languageOptions: { parserOptions: TYPED },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
    },
  },
  {
    files: ['src/**/*.ts', 'components/**/*.ts', 'tests/support/*.ts'],
    plugins: { house: { rules: { 'doc-block': docBlock } } },
    rules: { 'house/doc-block': 'error' },
  },
  {
    files: ['src/**', 'components/**'],
    rules: { 'max-lines-per-function': ['error', { max: FUNCTION_LINES }] },
  },
  { files: ['src/core/**/*.ts'], rules: { 'max-lines': ['error', { max: CORE_LINES }] } },
  { files: ['components/**'], rules: { 'max-lines': ['error', { max: COMPONENT_LINES }] } },
  {
    files: ['src/core/**/*.ts'],
    rules: {
      'no-restricted-syntax': ['error', ...EVERYWHERE, DEFAULT_EXPORT],
      // The compiler cannot see that an index runs inside the bounds of a matrix.
      '@typescript-eslint/no-non-null-assertion': 'off',
    },
  },
  // Nor inside those of the drawing's grid of lanes.
  { files: ['src/draw/board-lanes.ts'], rules: { '@typescript-eslint/no-non-null-assertion': 'off' } },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, ...TYPED } },
  },
  {
    files: ['**/*.svelte', '**/*.astro'],
    rules: { 'no-restricted-syntax': ['error', ...EVERYWHERE, INLINE_STYLE] },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
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
  {
    files: ['tests/**/*.ts'],
    rules: {
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
    },
  },
  {
    files: ['tests/{pages,widgets}/**/*.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        { name: '@playwright/test', importNames: ['test'], message: 'Take it from tests/support/test.ts.' },
      ],
    },
  },
  {
    // These talk to the person at the terminal.
    files: ['src/cli/**/*.ts', 'tests/**/*.ts'],
    rules: { 'no-console': 'off' },
  },
);
