/** Words and sentences that were once on the pages and are better said now: none of them in any page, nor in what a page says later. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '../support/test.ts';
import { parseAst } from 'vite';
import { makeFinder, type Section } from '../../components/search/finder.ts';
import { OUTCOMES, outcomeWords } from '../../src/core/verdict/index.ts';
import { SITE_FOLDER, readerPages } from '../support/site.ts';

/** Each with what is said in its place. */
const OLD: readonly (readonly [old: RegExp, now: string])[] = [
  [/\bCable sheet\b/i, 'build sheet'],
  [/\bFault bench\b/i, 'find the fault'],
  [/\boutlets?\b/i, 'output, OUT'],
  [/\bswitcher\b/i, 'foot controller'],
  [/\b(?:sound|proved) lead\b/i, 'tested lead'],
  [
    /\bprove (?:it|the lead|a lead)\b|\b(?:is|are|was|not|have|been) proved\b|\b(?:the|a|whole|full) proof\b/i,
    'test, tested',
  ],
  [/\bon offer\b/i, 'available'],
  [/\bIn time\b(?! for)/, 'bytes on the wire'],
  [/\bring of (?:links|leads|devices)\b|\b(?:links?|leads?) (?:form|make) a ring\b/i, 'feedback loop'],
  [
    /\b(?:which|upper|lower|left|right|top|bottom) edge of (?:the|a|its) (?:device|box|pedal)\b/i,
    'side of the device',
  ],
  [/\bPaper: (?:light|dark|as the system)\b/i, 'page colours'],
  [/\bStyle of (?:the|a) jack\b|\bjack styles?\b|\bdifferent styles\b/i, 'type'],
  [/\bOne press\b/, 'one footswitch press'],
  [/\bworst corner\b|\bat every corner\b/i, 'worst case'],
  [/\bIt speaks\b/, 'connects by'],
  [/\bTen thousand builds\b/i, '10 000 sets of real parts'],
  [/\b(?:Bit|Edge) back\b/, 'previous bit, previous edge'],
  [/\bAll else, by\b|\bA plug, whichever\b/i, 'everything else, per lead; any plug'],
  [/\blead in solder\b/i, 'leaded solder'],
  [
    /\bLay it\b|\bNothing laid\b|\bways? to lay\b|\blay the conductors\b/i,
    'add this wire; no wires yet; possible wirings',
  ],
  [/\bMake your own\b/i, 'add your own device'],
  [/\bTake link \d+ apart\b|\bTake the lead on the bench\b/i, 'remove link 1; use the lead from the bench'],
  [/\bChoose the leads anew\b|\bStart afresh\b|\bbegins? afresh\b|\banew\b/i, 'choose again, start over'],
  [/\bGo on with this one\b|\bTake the other tab\b/i, "keep this version, use the other tab's version"],
  [/\bNot so\.|\bAsk me again\b/, 'not quite; try again'],
  [/\b(?:a|one|two|four|few|each|which|the) looks?(?= (?:and|as|at six|parts|that|tell|would))/i, 'check'],
  [/\bto and fro\b|\bparts them\b/i, 'wiggled; splits them'],
  [/\bto speak of\b/i, 'almost no current'],
  [/\blinks deep\b|\bYour wish (?:is|stands)\b/i, 'links from the controller; you asked for'],
  [/\bUSB host between\.|\bneeds a USB host between\b/i, 'put a USB host box between them'],
  [/\bno matter of taste\b|\b(?:is|are) met\b(?! by)/i, 'the order matters; you will meet both'],
  [/\blike to be left out\b|\ball that leans on\b/i, 'often skipped; everything that depends on it'],
  [/\bin its hand\b|\bOff with it\b/i, 'depends on; switch it off'],
  [/\bgives? the saving away\b|\ballowed, not demanded\b/i, 'loses the saving; optional'],
  [/\b(?:lead|wire) is dead\b/i, 'nothing arrives'],
  [/\bnever dark\b|\bIf you guess here\b/i, 'the LED never goes off'],
  [/\bhangs on\b/i, 'depends on'],
  [/\d us\b/, 'µs'],
];

const ENTITIES: Readonly<Record<string, string>> = {
  '&#39;': "'",
  '&quot;': '"',
  '&amp;': '&',
  '&nbsp;': ' ',
};

/** What a reader sees or hears of built HTML. */
function textOf(html: string): string {
  const spoken = [...html.matchAll(/\s(?:aria-label|placeholder|title|alt)="([^"]*)"/g)].map(
    ([, text = '']) => text,
  );
  const seen = html.replace(/<(script|style)[\s\S]*?<\/\1>/g, ' ').replace(/<[^>]+>/g, ' ');
  return [seen, ...spoken]
    .join(' ')
    .replace(/&(?:#39|quot|amp|nbsp);/g, (entity) => ENTITIES[entity] ?? ' ')
    .replace(/\s+/g, ' ');
}

/** Sentences in a script: its strings and the pieces of its templates that have a space in them, without markup. */
function sentencesOf(script: string): string {
  const said: string[] = [];
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    const { type, value } = node as { type?: unknown; value?: unknown };
    if (type === 'Literal' && typeof value === 'string') said.push(value);
    else if (type === 'TemplateElement') said.push((value as { raw: string }).raw);
    else Object.values(node).forEach(walk);
  };
  walk(parseAst(script));
  return said
    .map((text) => text.replace(/<[^>]+>/g, ' '))
    .filter((text) => text.includes(' '))
    .join('\n');
}

function faults(text: string): readonly string[] {
  return OLD.flatMap(([old, now]) => {
    const found = old.exec(text);
    return found
      ? [`'${text.slice(Math.max(0, found.index - 30), found.index + 50).trim()}': say ${now}`]
      : [];
  });
}

test('an old word that is planted in a page or in a script is found', () => {
  expect(faults(textOf('<p>Take a proved\n lead</p>'))).not.toEqual([]);
  expect(faults(textOf('<button aria-label="Start afresh">x</button>'))).not.toEqual([]);
  expect(faults(sentencesOf('const outlets=[];say("Switch of the outlet.")'))).not.toEqual([]);
  expect(faults(sentencesOf('say(`All ${is?`well`:``} that ${proof} ends.`,"One press is.")'))).not.toEqual(
    [],
  );
  expect(faults(sentencesOf('const proof=outlets;say("All is well.")'))).toEqual([]);
});

test('no built page says an old word', () => {
  const found = readerPages().flatMap(({ address, file }) =>
    faults(textOf(readFileSync(file, 'utf8'))).map((fault) => `${address}: ${fault}`),
  );
  expect(found).toEqual([]);
});

test('nor does any script of the site', () => {
  const folder = join(SITE_FOLDER, '_astro');
  const scripts = readdirSync(folder).filter((name) => name.endsWith('.js'));
  expect(scripts.length).toBeGreaterThan(10);
  const found = scripts.flatMap((name) =>
    faults(sentencesOf(readFileSync(join(folder, name), 'utf8'))).map((fault) => `${name}: ${fault}`),
  );
  expect(found).toEqual([]);
});

test('each outcome is called by a word that a guitarist knows', () => {
  expect(OUTCOMES.filter((one) => one !== 'unsolved').map((one) => outcomeWords(one).label)).toEqual([
    'Works',
    'Marginal',
    'Too little current',
    'Between high and low',
    'Upside down',
    'Always on',
    'Reversed',
    'No path',
  ]);
});

test('a word of the trade is found in the glossary, by whatever name it is asked for', async () => {
  const sections = JSON.parse(readFileSync(join(SITE_FOLDER, 'sections.json'), 'utf8')) as readonly Section[];
  const find = await makeFinder(sections.filter(({ address }) => address.includes('/glossary/')));
  const words = [
    'pedalboard',
    'foot controller',
    'THRU box',
    'splitter',
    'merger',
    'adapter',
    'dongle',
    'DIN',
  ];
  for (const word of [...words, 'MIDI cable', 'TRS MIDI', 'Y lead']) {
    const [first] = find(word);
    const said = `${first?.heading ?? ''} ${first?.text ?? ''}`.toLowerCase();
    expect(said, word).toContain(word.toLowerCase());
  }
});
