/** The words in which a player tells the jacks of a device, each with what it means; and every spelling brought to one of them. */
import type { JackRole } from '../plan/index.ts';
import type { Direction, Style } from '../wiring/index.ts';

/** What one word says. `styles` are what a jack can be set to, the first as it stands. */
export type Meaning =
  | { readonly says: 'plug'; readonly plug: 'din5' | 'din7' | 'trs' | 'ts' }
  | { readonly says: 'size'; readonly size: '6.35' | '3.5' | '2.5' }
  | { readonly says: 'type'; readonly styles: readonly Style[] }
  | { readonly says: 'way'; readonly way: Way }
  | { readonly says: 'count'; readonly count: number; readonly after: boolean }
  | { readonly says: 'other'; readonly talks: 'usb-only' | 'wireless' }
  | { readonly says: 'nothing' };

/** A jack by what it does: `both` is one hole that receives on one contact and sends on the other. */
export interface Way {
  readonly direction: Direction | 'both';
  readonly role: JackRole;
}

const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'] as const;
const NUMBER = NUMBERS.join('|');

const plug = (one: 'din5' | 'din7' | 'trs' | 'ts'): Meaning => ({ says: 'plug', plug: one });
const type = (...styles: readonly Style[]): Meaning => ({ says: 'type', styles });
const way = (direction: Way['direction'], role: JackRole = 'plain'): Meaning => ({
  says: 'way',
  way: { direction, role },
});
const NOTHING: Meaning = { says: 'nothing' };

const MEANINGS = new Map<string, Meaning>([
  ['din', plug('din5')],
  ['din7', plug('din7')],
  ['trs', plug('trs')],
  ['ts', plug('ts')],
  ...(['6.35', '3.5', '2.5'] as const).map((size) => [size, { says: 'size', size }] as const),
  ['type-a', type('type-a')],
  ['type-b', type('type-b')],
  ['type-a/b', type('type-a', 'type-b')],
  ['on-tip', type('tip-signal')],
  ['on-ring', type('ring-signal')],
  ['two-contact', type('two-contact')],
  ['in', way('in')],
  ['out', way('out')],
  ['thru', way('out', 'thru')],
  ['out-or-thru', way('out', 'out-or-thru')],
  ['in-and-out', way('both')],
  ['usb', { says: 'other', talks: 'usb-only' }],
  ['wireless', { says: 'other', talks: 'wireless' }],
  ...['midi', 'and', 'with', 'has', 'a', 'an', 'the', 'on', 'of', 'one', 'jack', 'jacks', 'socket', 'sockets']
    .concat(['port', 'ports', 'mm', 'only', 'plus', '-', '–'])
    .map((word) => [word, NOTHING] as const),
]);

/** Spellings and the word that each stands for; the first that fits is taken, so the longer come first. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/\b([362]),(35|5)\b/g, '$1.$2'],
  // As the front page names what a player sees: 'round, five holes (DIN)', 'small jack, 3.5 mm'.
  [/\bround[\s,]+(?:7|seven)[\s-]+(?:holes?|pins?)\b(?:\s*\(?\s*din\b\)?)?/gi, ' din7 '],
  [/\bround\b(?:[\s,]+(?:5|five)[\s-]+(?:holes?|pins?)\b)?(?:\s*\(?\s*din\b\)?)?/gi, ' din '],
  [/\b(?:large|big)[\s-]?(?:jack|trs)s?\b/gi, ' 6.35 '],
  [/\bsmall[\s-]?(?:jack|trs)s?\b/gi, ' 3.5 '],
  [/\btiny[\s-]?(?:jack|trs)s?\b/gi, ' 2.5 '],
  [/\b(?:5|five)[\s-]?pins?\b(?:\s+din\b)?|\bdin[\s-]?5\b(?!-pin)/gi, 'din'],
  [/\b(?:7|seven)[\s-]?pins?\b(?:\s+din\b)?|\bdin[\s-]?7\b/gi, 'din7'],
  [/¼(?:"|″|''|[\s-]?inch\b)?|\b1\/4(?:"|″|''|[\s-]?inch\b)?|\b6\.3(?:5)?\s?(?:mm)?(?=$|[^\d.])/gi, ' 6.35 '],
  [/\b1\/8(?:"|″|''|[\s-]?inch\b)?|\bmini[\s-]?(?:jack|trs)\b|\b3\.5\s?(?:mm)?(?=$|[^\d.])/gi, ' 3.5 '],
  [/\b2\.5\s?(?:mm)?(?=$|[^\d.])/g, ' 2.5 '],
  [/\b(?:trs|type)[\s-]*a(?:\s*(?:\/|or)\s*|\s+or\s+type[\s-]+)b\b/gi, 'trs type-a/b'],
  [/\btrs[\s-]*(?:type[\s-]*)?([ab])\b/gi, 'trs type-$1'],
  [/\btype[\s-]*([ab])\b/gi, 'type-$1'],
  [
    /\b(?:(?:data|signal|active)\s+on(?:\s+the)?\s+|on\s+)?(tip|ring)(?:[\s-](?:active|signal))?\b/gi,
    'on-$1',
  ],
  [/\btwo[\s-]contacts?\b/gi, 'two-contact'],
  [/\bin(?:[\s-]and[\s-]|\s*\+\s*|-)out\s+jack\b|\bin-and-out\b/gi, 'in-and-out'],
  [
    /(?<!\/\s*)\b(?:out(?:put)?\s*\/\s*(?:thru|through)|(?:thru|through)\s*\/\s*out(?:put)?)\b/gi,
    'out-or-thru',
  ],
  [/\bout(?:put)?\s+or\s+(?:thru|through)\b|\b(?:thru|through)\s+or\s+out(?:put)?\b/gi, 'out-or-thru'],
  [/\b(in|out)(?:put)?s?\b(?!-)/gi, '$1'],
  [/\b(?:thrus?|through)\b(?!-)/gi, 'thru'],
  [/\b(\d+|one|two|three|four|five|six|seven|eight)\s*[x×](?=\s|$)/gi, 'count-$1'],
  [/(?<=^|\s)[x×]\s*(\d+)\b/gi, 'times-$1'],
];

/** Where the jacks of a line without ':' begin: a plug, a size, a count of either, or another way to be joined. */
const BEGINS = new RegExp(
  `(?:^|\\s)(?:(?:\\d+|${NUMBER})\\s*[x×]?\\s+)?` +
    '(?:din\\d?|trs|ts|midi|usb|wireless|(?:mini|small|large|big|tiny)[\\s-]?jacks?|round(?=,|\\s+(?:jack|in|out|thru)\\b)|¼|(?:[57]|five|seven)[\\s-]?pin|1/[48]|[632][.,](?:35?|5))(?![a-z])',
  'i',
);
const LAST_WAYS = /(?:(?:^|[\s/]+)(?:ins?|inputs?|outs?|outputs?|thru|through|and|or))+$/i;

/** A line without ':' as its name and the rest; all of it is name where no word speaks of a jack. */
export function partedName(text: string): readonly [string, string] {
  const colon = text.indexOf(':');
  if (colon >= 0) return [text.slice(0, colon), text.slice(colon + 1)];
  const from = BEGINS.exec(text)?.index;
  if (from === undefined) return [text, ''];
  const head = text.slice(0, from);
  const cut = LAST_WAYS.exec(head)?.index ?? head.length;
  return [text.slice(0, cut), text.slice(cut)];
}

/** The words of a text about jacks, between one comma and the next, each spelling brought to one. */
export function jackWords(text: string): readonly (readonly string[])[] {
  const plain = SPELLINGS.reduce((all, [spelling, word]) => all.replace(spelling, word), text);
  return plain
    .split(/[,;.](?=\s|$)|;/)
    .map((part) => part.split(/[\s+&()]+|(?<!type-a)\/(?!b)/).filter((word) => word !== ''))
    .filter((part) => part.length > 0);
}

/** Words of a line as they were typed: the shortest piece of the text that stands for them, or the words themselves where none does. */
export function asTyped(text: string, words: readonly string[]): string {
  const wanted = words.join(' ').toLowerCase();
  const typed = text.split(/\s+/);
  for (let many = 1; many <= typed.length; many++)
    for (let from = 0; from + many <= typed.length; from++) {
      const piece = typed
        .slice(from, from + many)
        .join(' ')
        .replace(/[,;.]$/, '');
      if (jackWords(piece).flat().join(' ').toLowerCase() === wanted) return piece;
    }
  return words.join(' ');
}

/** What a word means, or undefined. */
export function meaningOf(word: string): Meaning | undefined {
  const small = word.toLowerCase();
  const known = MEANINGS.get(small);
  if (known) return known;
  const [, how, digits] = /^(?:(count|times)-)?(\w+)$/.exec(small) ?? [];
  if (digits === undefined) return undefined;
  const at = (NUMBERS as readonly string[]).indexOf(digits);
  const count = at >= 0 ? at + 1 : /^\d+$/.test(digits) ? Number(digits) : 0;
  return count > 0 ? { says: 'count', count, after: how === 'times' } : undefined;
}
