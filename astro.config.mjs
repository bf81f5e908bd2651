import mdx from '@astrojs/mdx';
import sitemap from '@astrojs/sitemap';
import svelte from '@astrojs/svelte';
import { defineConfig } from 'astro/config';
import { licences } from './src/licences/integration.mjs';
import { course } from './src/course/integration.mjs';
import { headers } from './src/headers/integration.mjs';
import { search } from './src/search/integration.mjs';
import { fewerFiles } from './src/scripts/integration.mjs';
import { oneSheet } from './src/styles/integration.mjs';
import { offline } from './src/offline/integration.mjs';

const site = process.env.SITE_URL;

export default defineConfig({
  output: 'static',
  // Where the site stands on its host, such as '/course/loop/'.
  base: process.env.BASE_PATH ?? '/',
  // The host's own address: only with it can a page name itself, and a map of the site be made.
  ...(site === undefined ? {} : { site }),
  trailingSlash: 'always',
  prefetch: false,
  devToolbar: { enabled: false },
  integrations: [
    mdx(),
    svelte(),
    ...(site === undefined ? [] : [sitemap({ filter: (page) => !page.includes('/embed/') })]),
    fewerFiles(),
    oneSheet(),
    licences(),
    headers(),
    search(),
    course(),
    offline(),
  ],
  // The highlighter writes inline styles, which the policy below forbids.
  markdown: { syntaxHighlight: false },
  build: { inlineStylesheets: 'never' },
  vite: {
    build: {
      // A font or picture turned into a data: address would need a wider policy.
      assetsInlineLimit: 0,
      // One style sheet for the whole site, 14 kB after gzip: a page that waits for twenty small ones waits longer.
      cssCodeSplit: false,
    },
  },
  security: {
    csp: {
      directives: [
        "default-src 'self'",
        "img-src 'self'",
        "font-src 'self'",
        "connect-src 'self'",
        // A worker is started from a text of the page's own, so that it stands under this policy too.
        "worker-src 'self' blob:",
        "frame-src 'none'",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'none'",
      ],
    },
  },
});
