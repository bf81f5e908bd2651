/** After the build: bundle the player of a course package into one script and one sheet of styles, which the class page puts into a zip. */
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** @returns {import('astro').AstroIntegration} */
export function course() {
  let root = '';
  return {
    name: 'course',
    hooks: {
      'astro:config:setup': ({ config }) => {
        root = fileURLToPath(config.root);
      },
      'astro:build:done': async ({ dir }) => {
        await build({
          root,
          configFile: false,
          publicDir: false,
          logLevel: 'warn',
          // A package knows nothing of where it stands.
          base: './',
          plugins: [svelte({ configFile: false })],
          build: {
            outDir: fileURLToPath(new URL('course/', dir)),
            emptyOutDir: true,
            cssCodeSplit: false,
            modulePreload: false,
            rollupOptions: {
              input: `${root}src/course/main.ts`,
              output: {
                format: 'iife',
                entryFileNames: 'course.js',
                assetFileNames: 'course.[ext]',
                codeSplitting: false,
              },
            },
          },
        });
      },
    },
  };
}
