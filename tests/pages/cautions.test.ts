/** Wherever a page speaks of soldering or of a powered contact, it says what can hurt and whose word comes first. */
import { readFileSync } from 'node:fs';
import { expect, test } from '../support/test.ts';
import { SITE_BASE, builtPages } from '../support/site.ts';

/** Pages that only name things or lead on: a link to the cautions is enough. */
const LEADING = ['/', '/lessons/', '/glossary/', '/sources/'];

/** 'Solder side', 'solder lugs' and the like name a side of a plug, and nobody solders by reading them. */
const SIDES = /\bsolder(?:ing)? (?:side|lugs?|cups?|buckets?)\b|side that is soldered/gi;
const CAN_HURT =
  /\bsolder|\biron\b|phantom|\bpower(?:ed)? on\b|\bpowered (?:contact|pin|jack|socket|device)/i;

function mainOf(html: string): string {
  return (/<main[\s\S]*<\/main>/.exec(html)?.[0] ?? '').replace(/<(script|style)\b[\s\S]*?<\/\1>/g, '');
}

const textOf = (html: string): string =>
  html
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(SIDES, ' ');

const dangerous = builtPages()
  .map(({ address, file }) => ({ address, main: mainOf(readFileSync(file, 'utf8')) }))
  .filter(({ main }) => CAN_HURT.test(textOf(main)));

test('the tools and lessons in which somebody solders or measures a live device are among the pages looked at', () => {
  const found = dangerous.map(({ address }) => address);
  for (const address of [
    '/cable-sheet/',
    '/jack-finder/',
    '/meter/',
    '/fault-bench/',
    '/safety/',
    '/lessons/ask-the-jack/',
    '/lessons/solder-it/',
    '/lessons/prove-it/',
    '/lessons/when-nothing-answers/',
  ])
    expect(found).toContain(address);
});

test('a lesson tells one caution in full, and names each other one with its danger and a link', () => {
  const lessons = builtPages().filter(({ address }) => /^\/lessons\/[^/]+\/$/.test(address));
  expect(lessons.length).toBeGreaterThan(0);
  for (const { address, file } of lessons) {
    const main = mainOf(readFileSync(file, 'utf8'));
    expect(main.match(/class="caution-box"/g), address).toHaveLength(1);
    const named = /<ul class="cautions"[\s\S]*?<\/ul>/.exec(main)?.[0] ?? '';
    for (const [item] of named.matchAll(/<li[\s\S]*?<\/li>/g)) {
      expect(item, address).toContain(`href="${SITE_BASE}safety/#`);
      expect(textOf(item).split(' ').length, address).toBeGreaterThan(10);
    }
  }
});

for (const { address, main } of dangerous)
  test(`${address} says what can hurt, and puts local codes and qualified people first`, () => {
    const text = textOf(main);
    if (address !== '/safety/') expect(main).toContain(`href="${SITE_BASE}safety/`);
    if (LEADING.includes(address)) return;
    if (address !== '/safety/') expect(text).toMatch(/\bcautions?\b|what can hurt/i);
    expect(text).toMatch(/local (?:electrical )?codes|rules where you are/i);
    expect(text).toMatch(/qualified|licensed/i);
  });
