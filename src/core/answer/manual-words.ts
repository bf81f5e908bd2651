/** The words that manuals use for contacts and lines, in English, French, German and Spanish (common practice, no source). */
import type { Line } from '../wiring/index.ts';

/** The three contacts of a phone plug, as a manual may name them. */
export type PhoneContact = 'tip' | 'ring' | 'sleeve';

/** A line that a contact carries, or that it carries none. */
type Carried = Line | 'nothing';

/** A word of a manual that names a contact or what it carries. `exact` where it cannot be read in another way. */
type Token =
  | { readonly kind: 'contact'; readonly contact: PhoneContact; readonly word: string }
  | { readonly kind: 'carried'; readonly carried: Carried; readonly exact: boolean; readonly word: string }
  | { readonly kind: 'break'; readonly hard: boolean };

const CONTACTS: readonly (readonly [PhoneContact, string])[] = [
  ['tip', 'tips?|pointe|spitze|punta'],
  ['ring', 'rings?|anneau|bague|anillo'],
  ['sleeve', 'sleeves?|manchon|corps|hülse|huelse|schaft|manga|cuerpo|vaina'],
];

/** Single letters name contacts only where something that joins follows or stands before: 'T: 5', '4 = R'. */
const LETTERS: readonly (readonly [PhoneContact, string])[] = [
  ['tip', 't(?=[ ]*[=:>-])|(?<=[=:>-][ ]*)t(?![\\p{L}])'],
  ['ring', 'r(?=[ ]*[=:>-])|(?<=[=:>-][ ]*)r(?![\\p{L}])'],
  ['sleeve', 's(?=[ ]*[=:>-])|(?<=[=:>-][ ]*)s(?![\\p{L}])'],
];

const PIN =
  '(?:din[ ]|midi[ ])?(?:pins?|broches?|stifte?|kontakte?|patillas?|clavijas?|contactos?)[ .#]*(?:no\\.?[ ]?|n°[ ]?|nr\\.?[ ]?)?';
/** A bare 4, 5 or 2, which is no size or length (1/4, 2 m), no voltage and no number of pins. */
const bare = (digit: string): string =>
  `(?:${PIN})?(?<![\\d.,]|(?<!\\d)1/)${digit}(?![.,]?\\d|[ ]?[cm]?m(?![\\p{L}])|[ ]?v(?![\\p{L}])|[ -]?(?:pin|pol|broche|pôle|polig|terminal))`;

const CARRIED: readonly (readonly [Carried, boolean, string])[] = [
  [
    'nothing',
    true,
    'not[ ](?:connected|used|wired)|no[ ]connection|unused|unconnected|nothing|n[/.]?c|non[ ](?:connectée?|utilisée?)|rien|nicht[ ](?:belegt|verbunden|benutzt)|unbelegt|no[ ](?:conectad[oa]|usad[oa])|sin[ ]conexión',
  ],
  ['source', true, bare('4')],
  ['sink', true, bare('5')],
  ['shield', true, bare('2')],
  [
    'source',
    true,
    '(?:current[ ])?source(?:[ ]de[ ]courant)?|stromquelle|quelle|fuente(?:[ ]de[ ]corriente)?',
  ],
  ['sink', true, '(?:current[ ])?sink|senke|stromsenke|sumidero|drain'],
  [
    'source',
    false,
    'vref|v\\+|vcc|\\+[ ]?[35](?:[.,]3)?[ ]?v(?:olts?)?|(?<![\\d.,])(?:5|3[.,]3)[ ]?v(?:olts?)?|positive|positif|positiv|positivo|alimentation|versorgung|alimentación',
  ],
  ['sink', false, 'midi[ ]signal|midi[ ]data|data|signal|tx|rx|hot|données|daten|datos|señal|senal'],
  [
    'shield',
    false,
    'shield|ground|gnd|earth|screen|common|masse|terre|blindage|schirm|abschirmung|erde|tierra|masa|malla|pantalla',
  ],
];

const WORDS = [
  ...CONTACTS.map(([contact, words]) => ({ words, token: { kind: 'contact', contact } as const })),
  ...CARRIED.map(([carried, exact, words]) => ({
    words,
    token: { kind: 'carried', carried, exact } as const,
  })),
  ...LETTERS.map(([contact, words]) => ({ words, token: { kind: 'contact', contact } as const })),
];

const BREAKS = { words: '[.;\\n](?=[ ]|$)|[,/&]|(?:and|et|und|y|oder|or|ou|o)', hard: /^[.;\n]$/ };

let any: RegExp | undefined;
/** All of these words; made when it is first asked for, as the letters of all alphabets take a browser long. */
const anyWord = (): RegExp =>
  (any ??= new RegExp(
    `(?<![\\p{L}])(?:${WORDS.map(({ words }) => `(${words})`).join('|')})(?![\\p{L}])|(?<![\\p{L}])(${BREAKS.words})(?![\\p{L}])`,
    'gu',
  ));

/** The words of a text (in lower case) that name contacts or lines, and its breaks, in their order. */
function tokensIn(text: string): readonly Token[] {
  return [...text.matchAll(anyWord())].map((match): Token => {
    const word = match[0];
    const at = WORDS.findIndex((_, place) => match[place + 1] !== undefined);
    const found = WORDS[at];
    return found ? { ...found.token, word } : { kind: 'break', hard: BREAKS.hard.test(word) };
  });
}

/** A line that a text gives to a contact, with the words that say so. */
export interface Assigned {
  readonly contact: PhoneContact;
  readonly carried: Carried;
  readonly exact: boolean;
  readonly words: string;
}

type Named = Exclude<Token, { readonly kind: 'break' }>;

function pair(one: Named, other: Named): readonly Assigned[] {
  const [contact, line] = one.kind === 'contact' ? [one, other] : [other, one];
  if (contact.kind !== 'contact' || line.kind !== 'carried') return [];
  const words = `${contact.word} = ${line.word}`;
  return [{ contact: contact.contact, carried: line.carried, exact: line.exact, words }];
}

/** Pieces of a list, cut where `isCut` says so; the cuts themselves fall away. */
function pieces<T>(list: readonly T[], isCut: (one: T) => boolean): readonly (readonly T[])[] {
  const made: T[][] = [[]];
  for (const one of list) {
    if (isCut(one)) made.push([]);
    else made.at(-1)?.push(one);
  }
  return made;
}

const isNamed = (token: Token): token is Named => token.kind !== 'break';

/** Contacts first and then as many lines, or the other way round: 'tip, ring and sleeve are 5, 4 and 2'. A list cut short says nothing. */
function listed(named: readonly Named[]): readonly Assigned[] | undefined {
  const turn = named.findIndex(({ kind }) => kind !== named[0]?.kind);
  const [front, back] = [named.slice(0, turn), named.slice(turn)];
  if (turn < 2 || back.some(({ kind }) => kind === named[0]?.kind)) return undefined;
  return front.length === back.length ? front.flatMap((one, at) => pair(one, back[at] as Named)) : [];
}

/** Each contact of a text with what the text says that it carries. A contact that is told two things stands there twice. */
export function assignedIn(text: string): readonly Assigned[] {
  return pieces(tokensIn(text), (token) => token.kind === 'break' && token.hard).flatMap((sentence) => {
    const whole = listed(sentence.filter(isNamed));
    if (whole) return whole;
    return pieces(sentence, (token) => token.kind === 'break').flatMap((part) => {
      const named = part.filter(isNamed);
      return listed(named) ?? pairsAlong(named);
    });
  });
}

/** Neighbours of different kind, two by two: 'tip 5 ring 4', '5 tip 4 ring'. */
function pairsAlong(named: readonly Named[]): readonly Assigned[] {
  const found: Assigned[] = [];
  for (let at = 0; at + 1 < named.length; at++) {
    const made = pair(named[at] as Named, named[at + 1] as Named);
    if (made.length === 0) continue;
    found.push(...made);
    at++;
  }
  return found;
}
