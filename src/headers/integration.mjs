/** Headers of the site's answers: one list, for our own server and for hosts that read a file named `_headers`. */
import { writeFileSync } from 'node:fs';

/** What each answer carries. The rest of the content policy stands in each page. */
const EACH = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};

/** No page may stand inside a page of somebody else but those made for it; this works only as a header. */
const UNFRAMED = { 'Content-Security-Policy': "frame-ancestors 'none'" };
const EMBEDDABLE = '/embed/';

/** A file whose name holds a hash of its content never changes. */
const FOR_EVER = { 'Cache-Control': 'public, max-age=31536000, immutable' };
const NAMED_BY_CONTENT = '/_astro/';

/**
 * Headers of the answer to an address, which begins at the root of the site.
 * @param {string} address
 * @returns {Readonly<Record<string, string>>}
 */
export function headersOf(address) {
  return {
    ...EACH,
    ...(address.startsWith(EMBEDDABLE) ? {} : UNFRAMED),
    ...(address.startsWith(NAMED_BY_CONTENT) ? FOR_EVER : {}),
  };
}

/**
 * The same as a file for a host: a pattern of addresses, then its headers; `!` takes one away again.
 * @param {string} base where the site stands on its host, with a slash at both ends
 */
export function headersFile(base) {
  const rule = (pattern, headers) =>
    `${base}${pattern.slice(1)}\n${headers.map((line) => `  ${line}\n`).join('')}`;
  const lines = (headers) => Object.entries(headers).map(([name, value]) => `${name}: ${value}`);
  return [
    rule('/*', lines({ ...EACH, ...UNFRAMED })),
    rule(
      `${EMBEDDABLE}*`,
      Object.keys(UNFRAMED).map((name) => `! ${name}`),
    ),
    rule(`${NAMED_BY_CONTENT}*`, lines(FOR_EVER)),
  ].join('\n');
}

/** @returns {import('astro').AstroIntegration} */
export function headers() {
  let base = '/';
  return {
    name: 'headers',
    hooks: {
      'astro:config:done': ({ config }) => {
        base = config.base.replace(/\/?$/, '/');
      },
      'astro:build:done': ({ dir }) => writeFileSync(new URL('_headers', dir), headersFile(base)),
    },
  };
}
