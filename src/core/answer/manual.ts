/** What a manual says of a jack, read from its own words. Half a phrase gives a question back, never a wrong certainty. */
import { styleEntry } from '../wiring/index.ts';
import type { Direction } from '../wiring/index.ts';
import { fromContacts } from './manual-contacts.ts';
import { ASK_CONTACTS, LOOP_TYPES, cannot, contradicts, said } from './manual-reading.ts';
import type { ManualReading } from './manual-reading.ts';
import {
  ANY_TRS,
  ASK_MENU,
  NAMED_A,
  NAMED_B,
  NAMED_DIN,
  NAMED_USB,
  NOT,
  RULES,
  SHARED_JACK,
  word,
} from './manual-rules.ts';
import type { ManualRule } from './manual-rules.ts';
import { assignedIn } from './manual-words.ts';

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
  return { ...reading, state: 'half', type: undefined, could: LOOP_TYPES, questions: [ASK_CONTACTS] };
}

function read(words: string, direction: Direction): ManualReading {
  if (words === '') return cannot('there are no words to read', [ASK_CONTACTS]);
  const shared = word(SHARED_JACK).exec(words);
  if (shared) return fromSharedJack(shared, direction);
  const contacts = fromContacts(assignedIn(withoutTypes(words)));
  const named = fromNames(words);
  if (contacts && named) return both(contacts, named);
  const found = contacts ?? named;
  if (found) return found;
  const rule = RULES.find(({ when }) => word(when).test(words));
  const phone = word('trs|ts|phone|jack|klinke|3[.,]5|6[.,]3|1/4|1/8|2[.,]5|mini').test(words);
  if (word(NAMED_DIN).test(words) && !(rule && phone))
    return said('din', 'a 5-pin DIN jack always has pin 4, 5 and 2 in use');
  if (rule) return fromRule(rule);
  if (word(NAMED_USB).test(words))
    return cannot('USB is another way of carrying MIDI: no lead joins it to a MIDI jack', [
      'Has the device a MIDI jack besides USB? If not, a USB host box has to stand between.',
    ]);
  return cannot('these words name no type and no contact', [ASK_CONTACTS]);
}

function fromSharedJack([, , tipReceives]: RegExpExecArray, direction: Direction): ManualReading {
  const onTip = (tipReceives !== undefined) === (direction === 'in');
  const reason = `one jack receives and sends: this direction is on the ${onTip ? 'tip' : 'ring'}`;
  return { ...said(onTip ? 'tip-signal' : 'ring-signal', reason), inAndOut: true };
}

function fromRule({ state, could, reason, questions, inAndOut }: ManualRule): ManualReading {
  const type = state === 'cannot-be-told' ? undefined : could[0];
  return { state, type, could, reason, questions, ...(inAndOut === true ? { inAndOut } : {}) };
}

/** The text without the names of types, whose letters would be read as contacts and pins. */
function withoutTypes(words: string): string {
  return words.replace(new RegExp(`${NAMED_A}|${NAMED_B}`, 'gu'), ' ').replace(/rp-?0?54|midi 1\.0/g, ' ');
}

/** A type that is named outright: 'TRS Type B', 'Typ A', 'not Type A'. */
function fromNames(words: string): ManualReading | undefined {
  const denied = (name: string): boolean => word(`${NOT}${name}`).test(words);
  const a = word(NAMED_A).test(words) && !denied(NAMED_A);
  const b =
    (word(NAMED_B).test(words) ||
      (a && word('a[ ]?(?:/|or|oder|ou|o|and|und|et|y)[ ]?b(?![\\p{L}])').test(words))) &&
    !denied(NAMED_B);
  const shared = RULES[0];
  if (a && b && shared && word(shared.when).test(words)) return fromRule(shared);
  if (a && b)
    return {
      state: 'half',
      type: undefined,
      could: LOOP_TYPES,
      reason: 'it can be Type A or Type B',
      questions: [ASK_MENU],
    };
  if (a) return said('type-a', '‘Type A’ is named: pin 5 on the tip, pin 4 on the ring, pin 2 on the sleeve');
  if (b) return said('type-b', '‘Type B’ is named: pin 4 on the tip, pin 5 on the ring, pin 2 on the sleeve');
  const not = denied(NAMED_A) ? 'type-b' : denied(NAMED_B) ? 'type-a' : undefined;
  if (not === undefined) return undefined;
  return {
    state: 'half',
    type: not,
    could: ANY_TRS.filter((style) => style !== (not === 'type-b' ? 'type-a' : 'type-b')),
    reason: `it says what it is not; most such jacks are ${styleEntry(not).label}`,
    questions: [ASK_CONTACTS],
  };
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
