/** What a manual says of a jack, read from its own words. Half a phrase gives a question back, never a wrong certainty. */
import { STYLES, styleEntry } from '../wiring/index.ts';
import type { Direction, Style } from '../wiring/index.ts';
import { assignedIn } from './manual-words.ts';
import type { Assigned, PhoneContact } from './manual-words.ts';

/** How sure a reading is: said outright; half said, so that one answer would settle it; told of no type at all; or said two ways. */
export const MANUAL_STATES = ['said', 'half', 'cannot-be-told', 'contradicts'] as const;
export type ManualState = (typeof MANUAL_STATES)[number];

/** A manual's words understood. */
export interface ManualReading {
  readonly state: ManualState;
  /** The likeliest type; undefined when it cannot be told. */
  readonly type: Style | undefined;
  /** Every type that the words leave open, the likeliest first. Empty: the words leave every type open. */
  readonly could: readonly Style[];
  /** Why, in words that quote the manual's. */
  readonly reason: string;
  /** What is still open, as questions to the manual or its maker; none when the type is said. */
  readonly questions: readonly string[];
}

/** Text as the reader of words wants it: lower case, plain spaces, plain dashes and apostrophes. */
function plain(text: string): string {
  return text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/[’‘]/g, "'")
    .replace(/[“”«»"„]/g, ' ')
    .replace(/(?:->|→|⇒|=>|➔)/g, '=')
    .replace(/[^\S\n]+/g, ' ')
    .trim();
}

const LOOP: readonly Style[] = ['type-a', 'type-b'];
const TWO_CONTACTS: readonly Style[] = ['two-contact', 'two-contact-turned', 'tip-signal'];
const ANY_TRS: readonly Style[] = ['type-a', 'type-b', 'ring-signal', 'tip-signal', 'both-ways'];

const ASK_CONTACTS = 'Which DIN pin is on the tip, and which on the ring: 4, 5, or neither?';
const ASK_MENU =
  'Which of the two is the jack set to now? Look in the menu, or for a switch beside the jack.';

interface Rule {
  readonly when: RegExp;
  readonly state: ManualState;
  readonly could: readonly Style[];
  readonly reason: string;
  readonly questions: readonly string[];
}

const TYPE = '(?:trs|typ|type|tipo)[ -]?';
const A = `(?:${TYPE}|midi[ -])a(?![\\p{L}])`;
const B = `(?:${TYPE}|midi[ -])b(?![\\p{L}])`;
const NOT =
  "(?:not|isn't|never|no|nicht|kein(?:e|em|en)?|pas|non|sin)[ ](?:a[ ]|the[ ]|le[ ]|la[ ]|un[ ]|es[ ]|de[ ]|compatible with[ ]|for[ ])?";
const word = (pattern: string): RegExp => new RegExp(`(?<![\\p{L}])(?:${pattern})`, 'u');

/** Words that name a type without naming contacts, in the order in which they are tried; the first that fits decides. */
const RULES: readonly Rule[] = [
  {
    when: word(
      '(?:either|both|any)[ ](?:polarity|type|way)|(?:type[ -]?)?a (?:and|&) b (?:are )?(?:both )?(?:accepted|supported|work)|auto[ -]?(?:sens|detect|polar)|polarity[ -](?:free|independent|agnostic)|(?:les )?deux (?:types|polarités)|beide(?:r|n)? (?:typen|polaritäten)|(?:ambos|los dos) tipos|detecta automáticamente|verpolungs(?:sicher|frei)|unabhängig von der polarität',
    ),
    state: 'said',
    could: ['both-ways'],
    reason: 'it takes Type A and Type B alike',
    questions: [],
  },
  {
    when: word(
      'rp-?0?54|(?:midi )?trs (?:standard|specification|spec)|standard (?:midi )?trs|norme midi trs|trs-norm|estándar midi trs',
    ),
    state: 'said',
    could: ['type-a'],
    reason: 'the standard for phone jacks (MMA RP-054, 2018) is Type A: pin 5 on the tip, pin 4 on the ring',
    questions: [],
  },
  {
    when: word(
      '(?:dongle|adapt[eo]r|adaptateur|adaptador)s?[ ](?:cable |lead )?(?:is |are |est |ist |wird )?(?:included|supplied|provided|in the box|fournie?s?|inclus|mitgeliefert|beiliegend|incluid[oa]|suministrad[oa])|(?:supplied|included|bundled|mitgeliefert\\p{L}*|beiliegend\\p{L}*)[ ](?:midi |trs |din )*(?:dongle|adapter)|(?:adaptateur|adaptador)[ ](?:midi )?(?:fourni|inclus|incluido|suministrado)',
    ),
    state: 'cannot-be-told',
    could: [],
    reason:
      'the adapter in the box fits the jack, whatever its type is: with it the jack is a 5-pin DIN jack',
    questions: ['Is the adapter still there? Then choose DIN. If not: which DIN pin does it put on the tip?'],
  },
  {
    when: word(
      'expression|exp\\.? pedal|footswitch|foot switch|sustain|pédale|fußschalter|fussschalter|pedal de expresión|cv[ ](?:in|out|gate)|kopfhörer|headphones?',
    ),
    state: 'cannot-be-told',
    could: [],
    reason:
      'these words are about a pedal, switch or sound jack, and such a jack looks just like one for MIDI',
    questions: ['Does the manual name this very jack as MIDI? If a menu shares the jack, what is it set to?'],
  },
  {
    when: word(
      '(?:ts|mono|instrument|guitar|two[ -](?:conductor|contact|pole)|unbalanced)[ -](?:phone |patch |jack |instrument )*(?:cable|lead|cord|plug|jack)|(?:câble|cordon|jack|fiche)s? (?:jack )?(?:mono|instrument|guitare|ts)|mono[ -]?(?:klinke|kabel|stecker|klinkenkabel)|instrumentenkabel|(?:cable|jack|conector) (?:mono|ts|de guitarra|de instrumento)',
    ),
    state: 'half',
    could: TWO_CONTACTS,
    reason: 'a lead with two contacts has no ring, so both wires are tip and sleeve',
    questions: ['Is the sleeve ground, or is it pin 4 or pin 5 of the loop?', 'Which DIN pin is on the tip?'],
  },
  {
    when: word('trs|stereo|stéréo|stereoklinke|estéreo|balanced|symétrique|symmetrisch'),
    state: 'cannot-be-told',
    could: ANY_TRS,
    reason: '‘TRS’ or ‘stereo’ only says that the plug has three contacts, not what is on them',
    questions: [ASK_CONTACTS],
  },
];

const DIN = word(
  '(?:5|five|cinq|fünf|cinco)[ -]?(?:pin|pol\\p{L}*|broches|p)?[ -]?din|din[ -]?(?:5|jack|socket|buchse)|prise din|conector din',
);
const USB_ONLY = word('usb');

/**
 * Read what a manual says of a jack.
 * @param text its words as typed or pasted, in English, French, German or Spanish.
 * @param direction whether the jack sends or receives: no output takes both directions, and one jack may do both.
 */
export function readManual(text: string, direction: Direction): ManualReading {
  const reading = read(plain(text), direction);
  if (direction === 'in') return reading;
  const could = reading.could.filter((style) => styleEntry(style).forOutput);
  if (could.length === reading.could.length) return reading;
  if (could.length > 0) return { ...reading, could };
  return { ...reading, state: 'half', type: undefined, could: LOOP, questions: [ASK_CONTACTS] };
}

function read(words: string, direction: Direction): ManualReading {
  if (words === '') return cannot('there are no words to read', [ASK_CONTACTS]);
  const shared = SHARED_JACK.exec(words);
  if (shared) return fromSharedJack(shared, direction);
  const contacts = fromContacts(assignedIn(withoutTypes(words)));
  const named = fromNames(words);
  if (contacts && named) return both(contacts, named);
  const found = contacts ?? named;
  if (found) return found;
  const rule = RULES.find(({ when }) => when.test(words));
  const phone = word('trs|ts|phone|jack|klinke|3[.,]5|6[.,]3|1/4|1/8|2[.,]5|mini').test(words);
  if (DIN.test(words) && !(rule && phone))
    return said('din', 'a 5-pin DIN jack always has pin 4, 5 and 2 in use');
  if (rule) return fromRule(rule);
  if (USB_ONLY.test(words))
    return cannot('USB is another way of carrying MIDI: no lead joins it to a MIDI jack', [
      'Has the device a MIDI jack besides USB? If not, a USB host box has to stand between.',
    ]);
  return cannot('these words name no type and no contact', [ASK_CONTACTS]);
}

const RECEIVES =
  '(?:midi[ -])?(?:in(?:put)?|receives?|rx|entrée|reçoit|eingang|empfängt|entrada|recibe)(?![\\p{L}])';
const SENDS =
  '(?:midi[ -])?(?:out(?:put)?|sends?|transmits?|tx|sortie|émet|envoie|ausgang|sendet|salida|envía)(?![\\p{L}])';

/** One jack for both directions: 'tip = MIDI in, ring = MIDI out'. */
const SHARED_JACK = word(
  `(tip|pointe|spitze|punta)[ ]?[=:-]?[ ]?(?:(${RECEIVES})|${SENDS})[^.]{0,20}?(?:ring|anneau|bague|anillo)[ ]?[=:-]?[ ]?(?:${RECEIVES}|${SENDS})`,
);

function fromSharedJack([, , tipReceives]: RegExpExecArray, direction: Direction): ManualReading {
  const onTip = (tipReceives !== undefined) === (direction === 'in');
  return said(
    onTip ? 'tip-signal' : 'ring-signal',
    `one jack receives and sends: this direction is on the ${onTip ? 'tip' : 'ring'}`,
  );
}

function said(type: Style, reason: string): ManualReading {
  return { state: 'said', type, could: [type], reason, questions: [] };
}

function cannot(reason: string, questions: readonly string[]): ManualReading {
  return { state: 'cannot-be-told', type: undefined, could: [], reason, questions };
}

function fromRule({ state, could, reason, questions }: Rule): ManualReading {
  return { state, type: state === 'cannot-be-told' ? undefined : could[0], could, reason, questions };
}

/** The text without the names of types, whose letters would be read as contacts and pins. */
function withoutTypes(words: string): string {
  return words.replace(new RegExp(`${A}|${B}`, 'gu'), ' ').replace(/rp-?0?54|midi 1\.0/g, ' ');
}

/** A type that is named outright: 'TRS Type B', 'Typ A', 'not Type A'. */
function fromNames(words: string): ManualReading | undefined {
  const denied = (name: string): boolean => word(`${NOT}${name}`).test(words);
  const a = word(A).test(words) && !denied(A);
  const b =
    (word(B).test(words) ||
      (a && word('a[ ]?(?:/|or|oder|ou|o|and|und|et|y)[ ]?b(?![\\p{L}])').test(words))) &&
    !denied(B);
  const shared = RULES[0];
  if (a && b && shared?.when.test(words)) return fromRule(shared);
  if (a && b)
    return {
      state: 'half',
      type: undefined,
      could: LOOP,
      reason: 'it can be Type A or Type B',
      questions: [ASK_MENU],
    };
  if (a) return said('type-a', '‘Type A’ is named: pin 5 on the tip, pin 4 on the ring, pin 2 on the sleeve');
  if (b) return said('type-b', '‘Type B’ is named: pin 4 on the tip, pin 5 on the ring, pin 2 on the sleeve');
  const not = denied(A) ? 'type-b' : denied(B) ? 'type-a' : undefined;
  if (not === undefined) return undefined;
  return {
    state: 'half',
    type: not,
    could: ANY_TRS.filter((style) => style !== (not === 'type-b' ? 'type-a' : 'type-b')),
    reason: `it says what it is not; most such jacks are ${styleEntry(not).label}`,
    questions: [ASK_CONTACTS],
  };
}

/** Types whose contacts agree with everything that a text says of them. */
function fromContacts(assigned: readonly Assigned[]): ManualReading | undefined {
  if (assigned.length === 0) return undefined;
  const told = new Map<PhoneContact, Assigned>();
  for (const one of assigned) {
    const before = told.get(one.contact);
    if (before && before.carried !== one.carried)
      return contradicts(`it says ${before.words} and ${one.words}`);
    told.set(one.contact, one);
  }
  const reason = `it says ${[...told.values()].map(({ words }) => words).join(', ')}`;
  const could = STYLES.filter(
    (style) => style !== 'din' && style !== 'both-ways' && agrees(style, told),
  ).sort((one, other) => likelihood(other, told) - likelihood(one, told));
  const type = could[0];
  if (type === undefined) return contradicts(`${reason}, which no type known here does`);
  if (could.length === 1) return { state: 'said', type, could, reason, questions: [] };
  return { state: 'half', type, could, reason, questions: [openQuestion(told)] };
}

function contradicts(reason: string): ManualReading {
  return { state: 'contradicts', type: undefined, could: [], reason, questions: [ASK_CONTACTS] };
}

/** Whether a type puts on each contact what the text says. A word such as 'data' may stand for either live line of the loop. */
function agrees(style: Style, told: ReadonlyMap<PhoneContact, Assigned>): boolean {
  const { lines } = styleEntry(style);
  return [...told.values()].every(({ contact, carried }) => {
    const own = (Object.keys(lines) as (keyof typeof lines)[]).find((line) => lines[line] === contact);
    if (carried === 'nothing') return own === undefined;
    return own === carried;
  });
}

/** How well a type fits what is told and what is not: a loop where pins are named, a signal to ground where only 'signal' is. */
function likelihood(style: Style, told: ReadonlyMap<PhoneContact, Assigned>): number {
  const { family } = styleEntry(style);
  const exact = [...told.values()].some((one) => one.exact && one.carried !== 'nothing');
  const grounded = told.get('sleeve')?.carried === 'shield';
  return (exact === (family === 'loop') ? 2 : 0) + (grounded && style.startsWith('two-contact') ? -4 : 0);
}

function openQuestion(told: ReadonlyMap<PhoneContact, Assigned>): string {
  const missing = (['tip', 'ring', 'sleeve'] as const).find((contact) => !told.has(contact));
  const known = [...told.values()].some(({ carried }) => carried === 'source');
  if (missing === undefined) return ASK_CONTACTS;
  return missing === 'sleeve'
    ? 'What is on the sleeve: pin 2 (ground), or one of the pins 4 and 5?'
    : `What is on the ${missing}: DIN pin ${known ? '5' : '4'}, or nothing?`;
}

/** Contacts and a name in one text: they agree, or the text contradicts itself. */
function both(contacts: ManualReading, named: ManualReading): ManualReading {
  if (contacts.state === 'contradicts') return contacts;
  const shared = named.could.filter((style) => contacts.could.includes(style));
  const [only, ...more] = shared;
  if (only === undefined)
    return contradicts(
      `${contacts.reason}, and that is not ${named.type === undefined ? 'what it names' : styleEntry(named.type).label}: the drawing and the name disagree`,
    );
  if (more.length > 0) return named;
  return {
    ...named,
    state: 'said',
    type: only,
    could: [only],
    reason: `${named.reason}; ${contacts.reason}`,
    questions: [],
  };
}
