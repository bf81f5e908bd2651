import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '../support/test.ts';
import { attributeValues, policyOf } from '../support/html.ts';
import { builtPages, SITE_BASE, SITE_FOLDER } from '../support/site.ts';

const PAGES = builtPages();
const ids = new Map(
  PAGES.map(({ address, file }) => [address, new Set(attributeValues(readFileSync(file, 'utf8'), 'id'))]),
);

/** What is wrong with a link on a page, or undefined when it leads somewhere. */
function deadLink(from: string, link: string): string | undefined {
  const url = new URL(link, new URL(SITE_BASE + from.slice(1), 'http://site.invalid'));
  if (url.host !== 'site.invalid')
    return url.protocol === 'https:' ? undefined : `${link}: only https leads out`;
  if (!url.pathname.startsWith(SITE_BASE)) return `${link}: leaves the site`;
  const path = decodeURIComponent(url.pathname.slice(SITE_BASE.length - 1));
  const anchors = ids.get(path);
  if (anchors === undefined) {
    const file = join(SITE_FOLDER, path);
    return existsSync(file) && statSync(file).isFile() ? undefined : `${link}: there is no such page or file`;
  }
  const anchor = decodeURIComponent(url.hash.slice(1));
  // What a page is to open stands behind its address too, with its name: it is no place on the page.
  const isGiven = /^[a-z]+=/.test(anchor);
  return anchor === '' || isGiven || anchors.has(anchor) ? undefined : `${link}: the page has no such place`;
}

for (const { address, file } of PAGES) {
  test(`${address} holds no dead link and no missing anchor`, () => {
    const html = readFileSync(file, 'utf8');
    const links = [...attributeValues(html, 'href'), ...attributeValues(html, 'src')];
    expect(links.length).toBeGreaterThan(5);
    expect(
      links.map((link) => deadLink(address, link)).filter((complaint) => complaint !== undefined),
    ).toEqual([]);
  });

  test(`${address} gives every id once`, () => {
    const all = attributeValues(readFileSync(file, 'utf8'), 'id');
    expect(all.filter((id, place) => all.indexOf(id) !== place)).toEqual([]);
  });

  test(`${address} waits for one style sheet`, () => {
    expect(readFileSync(file, 'utf8').match(/<link rel="stylesheet"/g)).toHaveLength(1);
  });

  test(`${address} leaves a space between a word and a link or strong word beside it`, () => {
    const html = readFileSync(file, 'utf8');
    const glued = html.match(
      /.{0,20}[\p{L}.,;:]<(?:a|strong|em)[\s>].{0,20}|.{0,20}<\/(?:a|strong|em)>\p{L}.{0,20}/gu,
    );
    expect(glued ?? []).toEqual([]);
  });

  test(`${address} allows nothing inline but hashes`, () => {
    const html = readFileSync(file, 'utf8');
    const policy = policyOf(html) ?? '';
    const directives = new Map(
      policy
        .split(';')
        .map((directive) => directive.trim().split(/\s+/))
        .map(([name = '', ...values]) => [name, values]),
    );
    expect(directives.get('default-src')).toEqual(["'self'"]);
    expect(directives.get('img-src')).toEqual(["'self'"]);
    expect(directives.get('font-src')).toEqual(["'self'"]);
    expect(directives.get('connect-src')).toEqual(["'self'"]);
    expect(directives.get('object-src')).toEqual(["'none'"]);
    expect(directives.get('base-uri')).toEqual(["'none'"]);
    for (const name of ['script-src', 'style-src']) {
      const others = directives.get(name)?.filter((value) => !/^'sha256-[\w+/=]+'$/.test(value));
      expect(others, name).toEqual(["'self'"]);
    }
    expect(policy).not.toContain('unsafe');
    // Before the policy stands nothing that it would have to judge by its hash.
    expect(html.slice(0, html.indexOf('content-security-policy'))).not.toMatch(
      /<style|<script(?![^>]*\s(?:src=|type="application\/ld\+json"))/i,
    );
    expect(html).not.toMatch(/<[a-z][^>]*\s(?:style|on[a-z]+)="/i);
  });
}
