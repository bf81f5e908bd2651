/** Words of manuals that tell a type without naming contacts, in English, French, German and Spanish (common practice, no source). */
import type { Style } from '../wiring/index.ts';
import { ASK_CONTACTS } from './manual-reading.ts';
import type { ManualState } from './manual-reading.ts';
import { IN_AND_OUT_TYPES } from './told.ts';

const TWO_CONTACTS: readonly Style[] = ['two-contact', 'two-contact-turned', 'tip-signal'];
/** Every type behind a phone jack of three contacts. */
export const ANY_TRS: readonly Style[] = ['type-a', 'type-b', 'ring-signal', 'tip-signal', 'both-ways'];

/** The question where a menu or switch decides. */
export const ASK_MENU =
  'Which of the two is the jack set to now? Look in the menu, or for a switch beside the jack.';

/** Words that tell something of the type, or that nothing can be told. */
export interface ManualRule {
  /** A pattern for `word`. */
  readonly when: string;
  readonly state: ManualState;
  readonly could: readonly Style[];
  readonly reason: string;
  readonly questions: readonly string[];
  readonly inAndOut?: boolean;
}

const TYPE = '(?:trs|typ|type|tipo)[ -]?';
/** Type A by name. */
export const NAMED_A = `(?:${TYPE}|midi[ -])a(?![\\p{L}])`;
/** Type B by name. */
export const NAMED_B = `(?:${TYPE}|midi[ -])b(?![\\p{L}])`;
/** Words that deny what follows. */
export const NOT =
  "(?:not|isn't|never|no|nicht|kein(?:e|em|en)?|pas|non|sin)[ ](?:a[ ]|the[ ]|le[ ]|la[ ]|un[ ]|es[ ]|de[ ]|compatible with[ ]|for[ ])?";

const made = new Map<string, RegExp>();
/** What finds a pattern that begins where a word begins; made when it is first asked for, as the letters of all alphabets take a browser long. */
export function word(pattern: string): RegExp {
  const known = made.get(pattern) ?? new RegExp(`(?<![\\p{L}])(?:${pattern})`, 'u');
  made.set(pattern, known);
  return known;
}

/** Words that name a type without naming contacts, in the order in which they are tried; the first that fits decides. */
export const RULES: readonly ManualRule[] = [
  {
    when: '(?:either|both|any)[ ](?:polarity|type|way)|(?:type[ -]?)?a (?:and|&) b (?:are )?(?:both )?(?:accepted|supported|work)|auto[ -]?(?:sens|detect|polar)|polarity[ -](?:free|independent|agnostic)|(?:les )?deux (?:types|polarités)|beide(?:r|n)? (?:typen|polaritäten)|(?:ambos|los dos) tipos|detecta automáticamente|verpolungs(?:sicher|frei)|unabhängig von der polarität',
    state: 'said',
    could: ['both-ways'],
    reason: 'it takes Type A and Type B alike',
    questions: [],
  },
  {
    when: 'rp-?0?54|(?:midi )?trs (?:standard|specification|spec)|standard (?:midi )?trs|norme midi trs|trs-norm|estándar midi trs',
    state: 'said',
    could: ['type-a'],
    reason: 'the standard for phone jacks (MMA RP-054, 2018) is Type A: pin 5 on the tip, pin 4 on the ring',
    questions: [],
  },
  {
    when: '(?:dongle|adapt[eo]r|adaptateur|adaptador)s?[ ](?:cable |lead )?(?:is |are |est |ist |wird )?(?:included|supplied|provided|in the box|fournie?s?|inclus|mitgeliefert|beiliegend|incluid[oa]|suministrad[oa])|(?:supplied|included|bundled|mitgeliefert\\p{L}*|beiliegend\\p{L}*)[ ](?:midi |trs |din )*(?:dongle|adapter)|(?:adaptateur|adaptador)[ ](?:midi )?(?:fourni|inclus|incluido|suministrado)',
    state: 'cannot-be-told',
    could: [],
    reason:
      'the adapter in the box fits the jack, whatever its type is: with it the jack is a 5-pin DIN jack',
    questions: ['Is the adapter still there? Then choose DIN. If not: which DIN pin does it put on the tip?'],
  },
  {
    when: 'expression|exp\\.? pedal|footswitch|foot switch|sustain|pédale|fußschalter|fussschalter|pedal de expresión|cv[ ](?:in|out|gate)|kopfhörer|headphones?',
    state: 'cannot-be-told',
    could: [],
    reason:
      'these words are about a pedal, switch or sound jack, and such a jack looks just like one for MIDI',
    questions: ['Does the manual name this very jack as MIDI? If a menu shares the jack, what is it set to?'],
  },
  {
    when: '(?:ts|mono|instrument|guitar|two[ -](?:conductor|contact|pole)|unbalanced)[ -](?:phone |patch |jack |instrument )*(?:cable|lead|cord|plug|jack)|(?:câble|cordon|jack|fiche)s? (?:jack )?(?:mono|instrument|guitare|ts)|mono[ -]?(?:klinke|kabel|stecker|klinkenkabel)|instrumentenkabel|(?:cable|jack|conector) (?:mono|ts|de guitarra|de instrumento)',
    state: 'half',
    could: TWO_CONTACTS,
    reason: 'a lead with two contacts has no ring, so both wires are tip and sleeve',
    questions: ['Is the sleeve ground, or is it pin 4 or pin 5 of the loop?', 'Which DIN pin is on the tip?'],
  },
  {
    when: 'midi[ ]?i/o|(?:midi[ -])?in(?:put)?[ ]?(?:/|&|and|\\+)[ ]?out(?:put)?[ ](?:on|in|from|via)[ ](?:a |the )?(?:one|single|same|shared)|in-and-out|entrée et sortie sur (?:une|la même)|ein- und ausgang (?:auf|in|über) (?:einer|derselben)|entrada y salida en (?:un|el mismo)',
    state: 'half',
    could: IN_AND_OUT_TYPES,
    reason: 'one jack receives on one contact and sends on the other',
    questions: ['Which contact receives and which one sends: the tip or the ring?'],
    inAndOut: true,
  },
  {
    when: 'trs|stereo|stéréo|stereoklinke|estéreo|balanced|symétrique|symmetrisch',
    state: 'cannot-be-told',
    could: ANY_TRS,
    reason: '‘TRS’ or ‘stereo’ only says that the plug has three contacts, not what is on them',
    questions: [ASK_CONTACTS],
  },
];

/** A DIN jack by name. */
export const NAMED_DIN =
  '(?:5|five|cinq|fünf|cinco)[ -]?(?:pin|pol\\p{L}*|broches|p)?[ -]?din|din[ -]?(?:5|jack|socket|buchse)|prise din|conector din';
/** USB by name. */
export const NAMED_USB = 'usb';

const RECEIVES =
  '(?:midi[ -])?(?:in(?:put)?|receives?|rx|entrée|reçoit|eingang|empfängt|entrada|recibe)(?![\\p{L}])';
const SENDS =
  '(?:midi[ -])?(?:out(?:put)?|sends?|transmits?|tx|sortie|émet|envoie|ausgang|sendet|salida|envía)(?![\\p{L}])';

/** One jack for both directions: 'tip = MIDI in, ring = MIDI out'. */
export const SHARED_JACK = `(tip|pointe|spitze|punta)[ ]?[=:-]?[ ]?(?:(${RECEIVES})|${SENDS})[^.]{0,20}?(?:ring|anneau|bague|anillo)[ ]?[=:-]?[ ]?(?:${RECEIVES}|${SENDS})`;
