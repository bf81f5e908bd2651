import { defineConfig, globalIgnores } from 'eslint/config';
import astro from 'eslint-plugin-astro';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';

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

const EVERYWHERE = [STAR_IMPORT_OF_D3, STAR_EXPORT, ENUM];

export default defineConfig(
  globalIgnores(['dist/', '.astro/', 'test-results/']),
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
    files: ['src/core/**/*.ts'],
    rules: {
      'no-restricted-syntax': ['error', ...EVERYWHERE, DEFAULT_EXPORT],
      // The compiler cannot see that an index runs inside the bounds of a matrix.
      '@typescript-eslint/no-non-null-assertion': 'off',
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser } },
  },
  {
    files: ['**/*.svelte', '**/*.astro'],
    rules: { 'no-restricted-syntax': ['error', ...EVERYWHERE, INLINE_STYLE] },
  },
  {
    // These talk to the person at the terminal.
    files: ['src/cli/**/*.ts', 'tests/**/*.ts'],
    rules: { 'no-console': 'off' },
  },
);
