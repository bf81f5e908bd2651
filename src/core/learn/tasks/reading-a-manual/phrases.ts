/** Words of invented manuals for tasks. What they tell is judged by the reader of manuals. */
import { readManual } from '../../../answer/index.ts';
import type { Style } from '../../../wiring/index.ts';
import type { Chance } from '../task.ts';

/** What a phrase tells of an input. */
export const readPhrase = (words: string) => readManual(words, 'in');

/** Types of a jack with three contacts that tasks tell apart, in words that hold all that is known of them. */
export const TYPE_WORDS = {
  'type-a': 'Type A: pin 5 on the tip, pin 4 on the ring',
  'type-b': 'Type B: pin 4 on the tip, pin 5 on the ring',
  'ring-signal': 'Data on the ring, nothing on the tip',
  'tip-signal': 'Data on the tip, nothing on the ring',
} as const satisfies Partial<Record<Style, string>>;
/** One of them. */
export type Told = keyof typeof TYPE_WORDS;

/** All of them. */
export const TOLD_TYPES = Object.keys(TYPE_WORDS) as readonly Told[];

/** What makers print beside the contacts for each line, in three ways. */
const PRINTED = {
  source: ['pin 4', 'current source', '+5 V'],
  sink: ['pin 5', 'current sink', 'data'],
  shield: ['pin 2', 'shield', 'ground'],
  alone: ['pin 5', 'signal', 'data'],
} as const;

/** The three contacts with what is printed beside each, in one of three ways. */
export function labelsOf(type: Told, way: 0 | 1 | 2): readonly (readonly [contact: string, label: string])[] {
  const { source, sink, shield, alone } = PRINTED;
  const none = 'not connected';
  const [tip, ring] = {
    'type-a': [sink[way], source[way]],
    'type-b': [source[way], sink[way]],
    'ring-signal': [none, alone[way]],
    'tip-signal': [alone[way], none],
  }[type];
  return [
    ['tip', tip ?? none],
    ['ring', ring ?? none],
    ['sleeve', shield[way]],
  ];
}

/** Labels as one text, as a manual may print them. */
export const asText = (labels: readonly (readonly [string, string])[]): string =>
  labels.map(([contact, label]) => `${contact} = ${label}`).join(', ');

/** What is told of another pedal of the same maker: a trap from level 2 on. */
export function otherProduct(chance: Chance): {
  readonly type: 'type-a' | 'type-b';
  readonly row: readonly [string, string];
} {
  const type = chance.pick(['type-a', 'type-b'] as const);
  return { type, row: ['another pedal of the same maker', type === 'type-a' ? 'Type A' : 'Type B'] };
}
